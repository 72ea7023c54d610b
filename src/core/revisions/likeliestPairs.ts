/** The likeliest pairs of openings that are gone and openings that are new in one job. */
import { between, type Steps } from "../base/steps";
import type { IssuedOpening } from "./issue";
import { openingLikeness, type ComparedOpening } from "./likeness";
import { pairKey, type Pair } from "./markPairs";

/** An opening of one side, with the place of its name among those of both sides. */
export type Candidate = {
  readonly key: string;
  readonly opening: IssuedOpening;
  readonly rank: number;
  readonly compared: ComparedOpening;
};

/** How likely a pair is, and the places of its two names, the lower one first. */
type Likely = { readonly likeness: number; readonly ranks: readonly [number, number] };

export type LikelyPair = Pair & Likely;

/** The names decide between pairs as likely, whichever of the counts is the older one. */
export const likeliestFirst = (one: Likely, other: Likely): number =>
  other.likeness - one.likeness || one.ranks[0] - other.ranks[0] || one.ranks[1] - other.ranks[1];

/** Below this, two openings are taken to be two. */
const leastLikeness = 0.6;

/** So many pairs are looked at in one step. */
const pairsInStep = 2000;

/** So many choices are made in one step. */
const choicesInStep = 20;

/**
 * The likeliest pair of all, then the likeliest of the openings that are left, and so on. `refused` are
 * pairs by `pairKey` that are none.
 */
export function* likeliestPairs(
  gone: readonly Candidate[],
  come: readonly Candidate[],
  refused: ReadonlySet<string>,
): Steps<readonly LikelyPair[]> {
  const rows = yield* between(0, 0.5, likenessOfAll(gone, come, refused));
  const taken = new Set<Candidate>();
  // What is open holds the likeliest partner of each, which another may have taken since.
  const open: Choice[] = [];
  for (const [place, row] of rows.entries()) {
    if (place % choicesInStep === 0) yield 0.5 + (0.1 * place) / rows.length;
    open.push(...[likeliestOf(row, come, taken)].filter((choice) => choice !== null));
  }
  const pairs: LikelyPair[] = [];
  for (let chosen = 0; open.length > 0; chosen += 1) {
    if (chosen % choicesInStep === 0) yield 1 - (0.4 * open.length) / gone.length;
    const [place, choice] = likeliestIn(open);
    if (taken.has(choice.to)) {
      const next = likeliestOf(choice.row, come, taken);
      open.splice(place, 1, ...(next === null ? [] : [next]));
    } else {
      taken.add(choice.to);
      open.splice(place, 1);
      pairs.push(pairOf(choice));
    }
  }
  return pairs;
}

/** How likely an opening is each of the other side, zero for those that it cannot be. */
type Row = { readonly from: Candidate; readonly likeness: Float64Array };

/** As numbers beside each other: as objects to be sorted, all pairs take fifty times as long. */
function* likenessOfAll(
  gone: readonly Candidate[],
  come: readonly Candidate[],
  refused: ReadonlySet<string>,
): Steps<readonly Row[]> {
  const rows: Row[] = [];
  let looked = 0;
  for (const from of gone) {
    const likeness = new Float64Array(come.length);
    for (const [place, to] of come.entries()) {
      looked += 1;
      if (looked % pairsInStep === 0) yield looked / (gone.length * come.length);
      const share = openingLikeness(from.compared, to.compared, leastLikeness);
      if (share < leastLikeness) continue;
      const isRefused = refused.size > 0 && refused.has(pairKey(keysOf(from, to)));
      if (!isRefused) likeness[place] = share;
    }
    rows.push({ from, likeness });
  }
  return rows;
}

type Choice = Likely & { readonly row: Row; readonly to: Candidate };

/** The likeliest partner that is not taken; `null` where there is none. */
function likeliestOf(
  row: Row,
  come: readonly Candidate[],
  taken: ReadonlySet<Candidate>,
): Choice | null {
  let best: Choice | null = null;
  for (const [place, to] of come.entries()) {
    const likeness = row.likeness[place] ?? 0;
    if (likeness === 0 || likeness < (best?.likeness ?? 0) || taken.has(to)) continue;
    const [one, other] = [row.from.rank, to.rank];
    const ranks = one < other ? ([one, other] as const) : ([other, one] as const);
    const choice = { row, to, likeness, ranks };
    if (best === null || likeliestFirst(choice, best) < 0) best = choice;
  }
  return best;
}

/** @throws RangeError when there is no choice. */
function likeliestIn(choices: readonly Choice[]): readonly [place: number, choice: Choice] {
  let best: readonly [number, Choice] | null = null;
  for (const entry of choices.entries()) {
    if (best === null || likeliestFirst(entry[1], best[1]) < 0) best = entry;
  }
  if (best === null) throw new RangeError("There is no choice");
  return best;
}

const keysOf = (from: Candidate, to: Candidate): Pick<Pair, "oldKey" | "newKey"> => ({
  oldKey: from.key,
  newKey: to.key,
});

const pairOf = ({ row: { from }, to, likeness, ranks }: Choice): LikelyPair => ({
  ...keysOf(from, to),
  from: from.opening,
  to: to.opening,
  likeness,
  ranks,
});
