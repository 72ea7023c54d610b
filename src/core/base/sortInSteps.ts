/** Sorting so much that it must not be done in one go. */
import { between, type Steps } from "./steps";

/** So many are sorted, and so many are merged, in one step. */
const runLength = 512;

/**
 * The order that `toSorted` gives, what is equal as it stood: runs are sorted, then merged two by two.
 * `compare` is as there.
 */
export function* sortInSteps<Each>(
  all: readonly Each[],
  compare: (one: Each, other: Each) => number,
): Steps<readonly Each[]> {
  let runs: (readonly Each[])[] = [];
  const rounds = 1 + Math.ceil(Math.log2(Math.max(1, all.length / runLength)));
  for (let from = 0; from < all.length; from += runLength) {
    runs.push(all.slice(from, from + runLength).sort(compare));
    yield from / all.length / rounds;
  }
  for (let round = 1; runs.length > 1; round += 1) {
    const merged: (readonly Each[])[] = [];
    const doneAt = (run: number): number => (round + run / runs.length) / rounds;
    for (let run = 0; run < runs.length; run += 2) {
      const merging = mergeInSteps(runs[run] ?? [], runs[run + 1] ?? [], compare);
      merged.push(yield* between(doneAt(run), doneAt(run + 1), merging));
    }
    runs = merged;
  }
  return runs[0] ?? [];
}

/** Two sorted runs as one; of what is equal, that of the first run comes first. */
function* mergeInSteps<Each>(
  first: readonly Each[],
  second: readonly Each[],
  compare: (one: Each, other: Each) => number,
): Steps<readonly Each[]> {
  const merged: Each[] = [];
  const length = first.length + second.length;
  const others = second.values();
  let other = others.next();
  for (const one of first) {
    while (other.done !== true && compare(one, other.value) > 0) {
      if (merged.push(other.value) % runLength === 0) yield merged.length / length;
      other = others.next();
    }
    if (merged.push(one) % runLength === 0) yield merged.length / length;
  }
  for (; other.done !== true; other = others.next()) merged.push(other.value);
  return merged;
}
