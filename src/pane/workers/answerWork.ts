/** The worker's side of long work: the one call in the file that a worker is started with. */
import type { Steps } from "../../core/base/steps";
import type { Work, WorkerWords } from "./work";

/** Answers the one question that this worker is sent. It is ended by whoever started it. */
export function answerWork<Question, Answer, News = number>(
  work: Work<Question, Answer, News>,
): void {
  const say = (words: WorkerWords<Answer, News>): void => globalThis.postMessage(words);
  const onProgress = (done: News): void => say({ kind: "progress", done });
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

/** Milliseconds between two reports of steps. */
const pause = 50;

/** All the steps, one after the other: nobody but the page waits here, and it has its own thread. */
export const allSteps =
  <Question, Answer>(steps: (question: Question) => Steps<Answer>): Work<Question, Answer> =>
  (question, onProgress) => {
    const begun = steps(question);
    let toldAt = performance.now();
    for (;;) {
      const step = begun.next();
      if (step.done === true) return step.value;
      if (performance.now() - toldAt < pause) continue;
      toldAt = performance.now();
      onProgress(step.value);
    }
  };
