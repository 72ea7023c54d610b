/** Openings that are gone and openings that are new, in pairs that may be one opening under two marks. */
import { compareNames } from "../base/textOrder";
import { jobKey } from "../takeoff/takeOff";
import type { IssuedOpening } from "./issue";

/** Two marks of a job, whichever is named first. */
export type MarkPair = { readonly job: string; readonly from: string; readonly to: string };

/** What a person says of two marks: one opening, or two. */
export type MarkAnswer = MarkPair & { readonly isSame: boolean };

/** So many pairs of one job are looked at; a job with more is not guessed at. */
const mostPairs = 250_000;

/** By job, mark, and which of the same mark it is. */
export type Openings = Map<string, IssuedOpening>;

/** A mark that is used twice in a job is told apart by which of them it is. */
export function byMark(openings: readonly IssuedOpening[]): Openings {
  const found: Openings = new Map();
  for (const opening of openings) {
    let count = 1;
    while (found.has(openingKey(opening.job, opening.mark, count))) count += 1;
    found.set(openingKey(opening.job, opening.mark, count), opening);
  }
  return found;
}

export type Pair = {
  readonly oldKey: string;
  readonly newKey: string;
  readonly from: IssuedOpening;
  readonly to: IssuedOpening;
};

/** What was said of marks of which one is gone and the other new, in an order that is the same turned round. */
export function saidPairs(
  answers: readonly MarkAnswer[],
  removed: Openings,
  added: Openings,
): readonly (Pair & Pick<MarkAnswer, "isSame">)[] {
  const lastSaid = new Map(answers.map((answer) => [markPairKey(answer), answer]));
  return [...lastSaid.values()]
    .flatMap(({ job, from: one, to: other, isSame }) =>
      [
        [one, other],
        [other, one],
      ].flatMap(([older = "", newer = ""]) => {
        const [oldKey, newKey] = [openingKey(job, older), openingKey(job, newer)];
        const from = removed.get(oldKey);
        const to = added.get(newKey);
        return from === undefined || to === undefined ? [] : [{ oldKey, newKey, from, to, isSame }];
      }),
    )
    .sort((a, b) => compareNames(pairName(a), pairName(b)));
}

type PairsByJob = { readonly pairs: readonly Pair[]; readonly notGuessed: readonly string[] };

/** Every opening that is gone with every one that is new in the same job. */
export function pairsByJob(removed: Openings, added: Openings): PairsByJob {
  const addedTo = new Map<string, [string, IssuedOpening][]>();
  for (const [key, opening] of added) {
    const job = addedTo.get(jobKey(opening.job)) ?? [];
    job.push([key, opening]);
    addedTo.set(jobKey(opening.job), job);
  }
  const removedFrom = new Map<string, number>();
  for (const { job } of removed.values()) {
    removedFrom.set(jobKey(job), (removedFrom.get(jobKey(job)) ?? 0) + 1);
  }
  const notGuessed = new Map<string, string>();
  const pairs = [...removed].flatMap(([oldKey, from]): readonly Pair[] => {
    const others = addedTo.get(jobKey(from.job)) ?? [];
    if (others.length * (removedFrom.get(jobKey(from.job)) ?? 0) > mostPairs) {
      notGuessed.set(jobKey(from.job), from.job);
      return [];
    }
    return others.map(([newKey, to]) => ({ oldKey, newKey, from, to }));
  });
  return { pairs, notGuessed: [...notGuessed.values()].sort(compareNames) };
}

/** The pairs in their order, but for those of which an opening is taken; takes both from the lists. */
export function takePairs<Taken extends Pair>(
  pairs: readonly Taken[],
  removed: Openings,
  added: Openings,
): readonly Taken[] {
  return pairs.filter(({ oldKey, newKey }) => {
    if (!removed.has(oldKey) || !added.has(newKey)) return false;
    removed.delete(oldKey);
    added.delete(newKey);
    return true;
  });
}

const markKey = (mark: string): string => mark.trim().replace(/\s+/g, " ").toLowerCase();

/** The first opening of the mark, or a later one of the same mark. */
const openingKey = (job: string, mark: string, count = 1): string =>
  [jobKey(job), markKey(mark), count].join("\n");

/** The same for the same two marks of a job, in whichever order. */
export const markPairKey = ({ job, from, to }: MarkPair): string =>
  [jobKey(job), ...[markKey(from), markKey(to)].sort()].join("\n");

export const pairKey = ({ oldKey, newKey }: Pair): string => `${oldKey}\n${newKey}`;

/** The same whichever of two openings is the older one, so that a comparison turns round whole. */
export const pairName = ({ from, to }: Pick<Pair, "from" | "to">): string =>
  [nameOf(from), nameOf(to)].sort(compareNames).join("\n");

/**
 * Pairs of these openings in the order of their names, turned round or not. Each name is looked at
 * once, and the pairs, which are many more, by its rank.
 */
export function pairOrder(openings: readonly IssuedOpening[]): (one: Pair, other: Pair) => number {
  const names = new Map(openings.map((opening) => [opening, nameOf(opening)]));
  const sorted = [...new Set(names.values())].sort(compareNames);
  const ranks = new Map(sorted.map((name, rank) => [name, rank]));
  const rankOf = (opening: IssuedOpening): number => ranks.get(names.get(opening) ?? "") ?? 0;
  const ranksOf = ({ from, to }: Pair): readonly [number, number] => {
    const [one, other] = [rankOf(from), rankOf(to)];
    return one < other ? [one, other] : [other, one];
  };
  return (one, other) => {
    const [first, second] = ranksOf(one);
    const [otherFirst, otherSecond] = ranksOf(other);
    return first - otherFirst || second - otherSecond;
  };
}

export const nameOf = ({ job, mark, position }: IssuedOpening): string =>
  [jobKey(job), mark, String(position).padStart(9, "0")].join("\t");
