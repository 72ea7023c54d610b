/** How every command ends: its text on stdout, or why not on stderr, and the exit status. */
import type { Result } from "../../core/base/result";

export type Answer = { readonly text: string; readonly complete: boolean };

/** Status 0: all counted. 1: some openings not counted. 2: unusable input, with nothing on stdout. */
export function answer(result: Result<Answer, string>): void {
  // A reader that has seen enough, such as `head`, closes the pipe: that is no fault.
  process.stdout.on("error", (error: Error & { readonly code?: string }) => {
    if (error.code !== "EPIPE") throw error;
  });
  if (result.ok) {
    process.stdout.write(`${result.value.text}\n`);
    process.exitCode = result.value.complete ? 0 : 1;
  } else {
    process.stderr.write(`${result.error}\n`);
    process.exitCode = 2;
  }
}
