/**
 * Work that can be done a step at a time, so that whoever runs it can stop between steps, show how
 * far it is, or leave off. A step is a few milliseconds' worth and yields how much is done, from 0 to 1.
 */
export type Steps<Result> = Generator<number, Result, undefined>;

/** Does all the steps at once. */
export function finish<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** Something that is there already, where steps are asked for. */
export function* alreadyDone<Result>(result: Result): Steps<Result> {
  yield 1;
  return result;
}

/** The same steps as a part of longer work: their 0 to 1 becomes `from` to `to`. */
export function* between<Result>(from: number, to: number, steps: Steps<Result>): Steps<Result> {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield from + (to - from) * step.value;
  }
}
