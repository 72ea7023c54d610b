/** A large schedule, as a person brings it. */
import type { Page } from "playwright-core";

/** Opens a file with so many sliding doors for each of so many jobs, of five widths in turn. */
export async function chooseManyJobs(page: Page, jobs: number, each: number): Promise<void> {
  const widths = ["4'", '5\'-6""', "7'", "8'", "9'"];
  const rows = Array.from({ length: jobs * each }, (_, row) =>
    [
      `Job ${row % jobs}`,
      `M-${row}`,
      1 + (row % 3),
      "sliding door",
      `"${widths[row % 5] ?? ""}"`,
      "7'",
      "8'",
    ].join(),
  );
  const text = ["Job,Mark,Qty,Type,Width,Height,Post height", ...rows].join("\n");
  await page.setInputFiles("input[type=file]", {
    name: "jobs.csv",
    mimeType: "text/csv",
    buffer: Buffer.from(text),
  });
  await page.getByText("Opened jobs.csv.").waitFor();
}
