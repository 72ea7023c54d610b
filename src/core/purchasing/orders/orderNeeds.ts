/** Phase one of an order: the net need of every item and size over the chosen jobs. */
import { pieces, type Pieces } from "../../base/units";
import { cutLengthOf } from "../cutting/cutLength";
import type { CutPieces } from "../cutting/cutProblem";
import { groupBy } from "../../base/groupBy";
import { needOf, type FreeStock, type JobCount, type Need } from "../need";
import type { Demand, OrderInput, OrderJob } from "./orderInput";
import { compareSized, compareText, sizedKey } from "../sizedItem";
import { jobKeyOf, piecesByKey, type JobPieces } from "../sizedPieces";

export type OrderNeed = {
  readonly need: Need;
  readonly isCut: boolean;
  /** By mark, what is to be cut of it; none for what is not cut. */
  readonly cut: readonly CutPieces[];
  /** The earliest date of the jobs that something is bought for. */
  readonly needBy: number | null;
};

/** The mark of pieces that are spares. */
export const spareMark = "spare";

/**
 * By item, then by size. Bars and offcuts on hand and on order serve the cut plan and are not taken
 * off here.
 */
export function orderNeeds(input: OrderInput): readonly OrderNeed[] {
  const { standing } = input;
  const onHand = piecesByKey(standing.onHand, sizedKey);
  const onOrder = piecesByKey(standing.onOrder, sizedKey);
  const ofJob = (each: JobPieces): string => jobKeyOf(each.job, each);
  const supplied = piecesByKey(standing.supplied, ofJob);
  const ordered = piecesByKey(standing.orderedForJobs, ofJob);
  const typed = piecesByKey(input.typedSpares ?? [], ofJob);
  const at = (counts: ReadonlyMap<string, number>, key: string): Pieces =>
    pieces(counts.get(key) ?? 0);
  const chosen = new Set(input.jobs.map(({ job }) => job));
  const groups = groupBy(
    input.demands.filter(({ job, quantity }) => chosen.has(job) && quantity > 0),
    sizedKey,
  );
  return [...groups.values()]
    .flatMap((demands) => {
      const [first] = demands;
      if (first === undefined) return [];
      const counts = [...groupBy(demands, ({ job }) => job)].map(([job, counts]): JobCount => ({
        job,
        counted: sumOf(counts.map(({ quantity }) => quantity)),
        supplied: at(supplied, jobKeyOf(job, first)),
        onOrder: at(ordered, jobKeyOf(job, first)),
        ...(typed.has(jobKeyOf(job, first)) ? { ownSpares: at(typed, jobKeyOf(job, first)) } : {}),
      }));
      const isCut = demands.some((demand) => demand.isCut);
      const free: FreeStock = isCut
        ? { onHand: pieces(0), onOrder: pieces(0) }
        : { onHand: at(onHand, sizedKey(first)), onOrder: at(onOrder, sizedKey(first)) };
      const need = needOf(first, counts, input.spares(first.item), free);
      const cut = isCut ? piecesToCut(need, demands) : [];
      return [{ need, isCut, cut, needBy: earliestNeed(need, input.jobs) }];
    })
    .sort((a, b) => compareSized(a.need, b.need));
}

/**
 * What is still to be cut for each job, mark by mark in their order, spares last. What the job
 * already has counts for the first marks.
 */
function piecesToCut(need: Need, demands: readonly Demand[]): readonly CutPieces[] {
  const [size] = need.size;
  if (size === undefined) return [];
  const length = cutLengthOf(size);
  return need.jobs.flatMap(({ job, counted, spares, buy }) => {
    const marks = demands
      .filter((demand) => demand.job === job)
      .sort((a, b) => compareText(a.mark, b.mark))
      .map(({ mark, quantity }) => ({ mark, count: quantity }));
    let covered = counted + spares - buy;
    return [...marks, { mark: spareMark, count: spares }].flatMap(({ mark, count }) => {
      const has = Math.min(covered, count);
      covered -= has;
      return count === has ? [] : [{ job, mark, length, count: pieces(count - has) }];
    });
  });
}

function earliestNeed(need: Need, jobs: readonly OrderJob[]): number | null {
  const buying = new Set(need.jobs.filter(({ buy }) => buy > 0).map(({ job }) => job));
  return earliest(jobs.map(({ job, needBy }) => (buying.has(job) ? needBy : null)));
}

/** The earliest of the dates that are known. */
export const earliest = (dates: readonly (number | null)[]): number | null =>
  dates.reduce(
    (first, date) => (date === null || (first !== null && first <= date) ? first : date),
    null,
  );

const sumOf = (counts: readonly Pieces[]): Pieces =>
  pieces(counts.reduce<number>((sum, count) => sum + count, 0));
