/** The worker's side of long work: the one call in the file that a worker is started with. */
import type { Steps } from "../../core/base/steps";
import type { Work, WorkerWords } from "./work";

/** Milliseconds between two reports. */
const pause = 50;

/** Answers the one question that this worker is sent. It is ended by whoever started it. */
export function answerWork<Question, Answer>(work: Work<Question, Answer>): void {
  const say = (words: WorkerWords<Answer>): void => globalThis.postMessage(words);
  let toldAt = performance.now();
  const onProgress = (done: number): void => {
    if (performance.now() - toldAt < pause) return;
    toldAt = performance.now();
    say({ kind: "progress", done });
  };
  globalThis.addEventListener("message", ({ data }: MessageEvent<Question>) => {
    void answer(data);
  });
  const answer = async (question: Question): Promise<void> => {
    try {
      say({ kind: "answer", answer: await work(question, onProgress) });
    } catch (fault) {
      // Out of the promise, to where the page hears of it.
      globalThis.reportError(fault);
    }
  };
}

/** All the steps, one after the other: nobody but the page waits here, and it has its own thread. */
export const allSteps =
  <Question, Answer>(steps: (question: Question) => Steps<Answer>): Work<Question, Answer> =>
  (question, onProgress) => {
    const begun = steps(question);
    for (;;) {
      const step = begun.next();
      if (step.done === true) return step.value;
      onProgress(step.value);
    }
  };
