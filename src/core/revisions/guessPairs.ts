/** Guessing which openings that are gone are new ones under another mark. */
import { sortInSteps } from "../base/sortInSteps";
import { between, type Steps } from "../base/steps";
import { compareNames } from "../base/textOrder";
import { groupBy } from "../base/groupBy";
import { jobKey } from "../takeoff/takeOff";
import type { IssuedOpening } from "./issue";
import { likeliestFirst, likeliestPairs, type Candidate, type LikelyPair } from "./likeliestPairs";
import { readyToCompare } from "./likeness";
import { nameOf, takePairs, type Openings } from "./markPairs";

export type Guesses = {
  /** The likeliest first. */
  readonly pairs: readonly LikelyPair[];
  /** Jobs of which too many openings came and went to be looked at. */
  readonly notGuessed: readonly string[];
};

/** So many pairs of one job are looked at; a job with more is not guessed at. */
const mostPairs = 250_000;

/**
 * The likeliest pairs of one job each, no opening in two; takes them from both lists. `refused` are
 * pairs by `pairKey` that a person said are two openings.
 */
export function* guessPairs(
  removed: Openings,
  added: Openings,
  refused: ReadonlySet<string>,
): Steps<Guesses> {
  const ranks = yield* between(0, 0.1, ranksByName([...removed.values(), ...added.values()]));
  const ready = readyToCompare();
  const come = yield* between(0.1, 0.15, candidatesByJob(added, ranks, ready));
  const gone = yield* between(0.15, 0.2, candidatesByJob(removed, ranks, ready));
  const notGuessed: string[] = [];
  const taken: LikelyPair[] = [];
  for (const [place, [job, older]] of [...gone].entries()) {
    const done = (share: number): number => 0.2 + (0.7 * (place + share)) / gone.size;
    yield done(0);
    const newer = come.get(job) ?? [];
    if (older.length * newer.length > mostPairs) {
      notGuessed.push(older[0]?.opening.job ?? job);
      continue;
    }
    const pairs = yield* between(done(0), done(1), likeliestPairs(older, newer, refused));
    taken.push(...takePairs(pairs, removed, added));
  }
  const pairs = yield* between(0.9, 1, sortInSteps(taken, likeliestFirst));
  return { pairs, notGuessed: notGuessed.sort(compareNames) };
}

/** So many openings are made ready in one step. */
const openingsInStep = 200;

function* candidatesByJob(
  openings: Openings,
  ranks: ReadonlyMap<IssuedOpening, number>,
  ready: ReturnType<typeof readyToCompare>,
): Steps<ReadonlyMap<string, readonly Candidate[]>> {
  const candidates: Candidate[] = [];
  for (const [key, opening] of openings) {
    if (candidates.length % openingsInStep === 0) yield candidates.length / openings.size;
    const rank = ranks.get(opening) ?? 0;
    candidates.push({ key, opening, rank, compared: ready(opening) });
  }
  return groupBy(candidates, ({ opening }) => jobKey(opening.job));
}

/** The places of openings in the order of their names, the same for those of one name. */
function* ranksByName(
  openings: readonly IssuedOpening[],
): Steps<ReadonlyMap<IssuedOpening, number>> {
  const names = new Map(openings.map((opening) => [opening, nameOf(opening)]));
  const sorted = yield* sortInSteps([...new Set(names.values())], compareNames);
  const ranks = new Map(sorted.map((name, rank) => [name, rank]));
  return new Map([...names].map(([opening, name]) => [opening, ranks.get(name) ?? 0]));
}
