/**
 * Work that can be done a step at a time, so that whoever runs it can stop between steps, show how
 * far it is, or leave off. A step is a few milliseconds' worth; what is yielded is of no account.
 */
export type Steps<Result> = Generator<undefined, Result, undefined>;

/** Does all the steps at once. */
export function finish<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
