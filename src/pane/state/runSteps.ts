/** Does long work in short turns, so that the pane and the spreadsheet answer in between. */
import type { Steps } from "../../core/base/steps";

export type RunOptions = {
  readonly signal: AbortSignal;
  /** Told of progress from 0 to 1, between turns. */
  readonly onProgress?: (done: number) => void;
};

/** A turn ends after the first step past this many milliseconds. */
const longestTurn = 12;

/** What the steps come to; `null` when they were aborted before they ended. */
export async function runSteps<Result>(
  steps: Steps<Result>,
  { signal, onProgress }: RunOptions,
): Promise<Result | null> {
  let turnBegan = performance.now();
  while (!signal.aborted) {
    const step = steps.next();
    if (step.done === true) return step.value;
    if (performance.now() - turnBegan < longestTurn) continue;
    onProgress?.(step.value);
    await letOthers();
    turnBegan = performance.now();
  }
  return null;
}

/** Behind everything that waits now; a timer would add milliseconds to each turn. */
export const letOthers = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
