/** Openings that are gone and openings that are new, in pairs that may be one opening under two marks. */
import { compareNames } from "../base/textOrder";
import { jobKey } from "../takeoff/takeOff";
import type { IssuedOpening } from "./issue";

/** Two marks of a job, whichever is named first. */
export type MarkPair = { readonly job: string; readonly from: string; readonly to: string };

/** What a person says of two marks: one opening, or two. */
export type MarkAnswer = MarkPair & { readonly isSame: boolean };

/** By job, mark, and which of the same mark it is. */
export type Openings = Map<string, IssuedOpening>;

/** A mark that is used twice in a job is told apart by which of them it is. */
export function byMark(openings: readonly IssuedOpening[]): Openings {
  const found: Openings = new Map();
  const counts = new Map<string, number>();
  for (const opening of openings) {
    const key = sharedKey(opening.job, opening.mark);
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    found.set(`${key}\n${count}`, opening);
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

/** Of all openings of the mark. */
const sharedKey = (job: string, mark: string): string => `${jobKey(job)}\n${markKey(mark)}`;

/** The key of the first opening of the mark. */
const openingKey = (job: string, mark: string): string => `${sharedKey(job, mark)}\n1`;

/** The same for the same two marks of a job, in whichever order. */
export const markPairKey = ({ job, from, to }: MarkPair): string =>
  [jobKey(job), ...[markKey(from), markKey(to)].sort()].join("\n");

export const pairKey = ({ oldKey, newKey }: Pick<Pair, "oldKey" | "newKey">): string =>
  `${oldKey}\n${newKey}`;

/** The same whichever of two openings is the older one, so that a comparison turns round whole. */
export const pairName = ({ from, to }: Pick<Pair, "from" | "to">): string =>
  [nameOf(from), nameOf(to)].sort(compareNames).join("\n");

export const nameOf = ({ job, mark, position }: IssuedOpening): string =>
  [jobKey(job), mark, String(position).padStart(9, "0")].join("\t");
