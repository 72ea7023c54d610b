import { describe, expect, test } from "@jest/globals";
import type { Steps } from "../../src/core/base/steps";
import { runSteps } from "../../src/pane/state/runSteps";

function* work(steps: number, milliseconds: number): Steps<string> {
  for (let step = 0; step < steps; step += 1) {
    const until = performance.now() + milliseconds;
    while (performance.now() < until);
    yield step / steps;
  }
  return "done";
}

describe("work in turns", () => {
  test("comes to what the steps come to", async () => {
    const { signal } = new AbortController();
    expect(await runSteps(work(3, 0), { signal })).toBe("done");
  });

  test("lets others have a turn, and tells how far it is", async () => {
    const { signal } = new AbortController();
    const told: number[] = [];
    let others = 0;
    const other = setInterval(() => (others += 1), 0);
    await runSteps(work(10, 15), { signal, onProgress: (done) => told.push(done) });
    clearInterval(other);
    expect(others).toBeGreaterThan(2);
    expect(told.length).toBeGreaterThan(2);
    expect(told).toEqual([...told].sort((one, next) => one - next));
  });

  test("ends between two steps when it is aborted", async () => {
    const abort = new AbortController();
    let done = 0;
    const outcome = await runSteps(work(1000, 15), {
      signal: abort.signal,
      onProgress: () => {
        done += 1;
        if (done === 2) abort.abort();
      },
    });
    expect(outcome).toBeNull();
    expect(done).toBe(2);
  });

  test("does not begin when it is aborted before", async () => {
    const abort = new AbortController();
    abort.abort();
    expect(await runSteps(work(1, 0), { signal: abort.signal })).toBeNull();
  });
});
