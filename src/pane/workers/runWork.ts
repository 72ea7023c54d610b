/**
 * The page's side of long work: done by a worker, so that the page stays free, and on the page where
 * a worker cannot be had, as where a host's policy forbids it.
 */
import type { OnProgress, WorkerWords } from "./work";

export type WorkOptions<News = number> = {
  readonly signal: AbortSignal;
  readonly onProgress?: OnProgress<News>;
};

export type WorkPlaces<Question, Answer, News = number> = {
  /** Starts the worker: `() => new Worker(new URL("./some.worker.ts", import.meta.url))`. */
  readonly start: () => Worker;
  /** Does the same on the page, in short turns; `null` when it was aborted. */
  readonly onPage: (question: Question, options: WorkOptions<News>) => Promise<Answer | null>;
};

/**
 * What the work comes to; `null` when it was aborted before it ended, which ends the worker. A worker
 * that fails before its first word was not to be had; one that fails later throws here.
 */
export async function runWork<Question, Answer, News = number>(
  { start, onPage }: WorkPlaces<Question, Answer, News>,
  question: Question,
  options: WorkOptions<News>,
): Promise<Answer | null> {
  const worker = startedWorker(start);
  if (worker === null) return await onPage(question, options);
  const answer = await answerOf(worker, question, options);
  worker.terminate();
  if (answer === "none") return await onPage(question, options);
  // The worker's file does the same work as `onPage`.
  return answer.answer as Answer | null;
}

function startedWorker(start: () => Worker): Worker | null {
  if (typeof Worker === "undefined") return null;
  try {
    return start();
  } catch (fault) {
    // A policy against workers is said by throwing this; anything else is a fault of ours.
    if (fault instanceof DOMException) return null;
    throw fault;
  }
}

/** `none` where the worker never came to work. */
function answerOf<News>(
  worker: Worker,
  question: unknown,
  { signal, onProgress }: WorkOptions<News>,
): Promise<{ readonly answer: unknown } | "none"> {
  return new Promise((resolve, reject) => {
    let hasSpoken = false;
    const stop = (): void => resolve({ answer: null });
    if (signal.aborted) stop();
    signal.addEventListener("abort", stop, { once: true });
    worker.addEventListener("message", ({ data }: MessageEvent<WorkerWords<unknown, News>>) => {
      hasSpoken = true;
      if (data.kind === "progress") onProgress?.(data.done);
      else resolve({ answer: data.answer });
    });
    worker.addEventListener("error", (event) => {
      // An error without words is a file that could not be had.
      if (!hasSpoken && !event.message) resolve("none");
      else reject(new Error(event.message));
    });
    worker.postMessage(question);
  });
}
