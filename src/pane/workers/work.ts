/** What a worker and the page say to each other. */

/** Told of progress: from 0 to 1, or news of the work's own kind. */
export type OnProgress<News = number> = (done: News) => void;

/** What a worker says: how far it is, then the answer. A fault is thrown, and heard as an error. */
export type WorkerWords<Answer, News = number> =
  | { readonly kind: "progress"; readonly done: News }
  | { readonly kind: "answer"; readonly answer: Answer };

/** Something long that a worker does: plain data in, plain data out. */
export type Work<Question, Answer, News = number> = (
  question: Question,
  onProgress: OnProgress<News>,
) => Answer | Promise<Answer>;
