/** What a worker and the page say to each other. */

/** Told of progress from 0 to 1. */
export type OnProgress = (done: number) => void;

/** What a worker says: how far it is, then the answer. A fault is thrown, and heard as an error. */
export type WorkerWords<Answer> =
  | { readonly kind: "progress"; readonly done: number }
  | { readonly kind: "answer"; readonly answer: Answer };

/** Something long that a worker does: plain data in, plain data out. */
export type Work<Question, Answer> = (
  question: Question,
  onProgress: OnProgress,
) => Answer | Promise<Answer>;
