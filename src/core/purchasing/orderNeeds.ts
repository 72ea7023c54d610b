/** Phase one of an order: the net need of every item and size over the chosen jobs. */
import { pieces, type Pieces } from "../base/units";
import { cutLengthOf } from "./cutting/cutLength";
import type { CutPieces } from "./cutting/cutProblem";
import { needOf, type FreeStock, type JobCount, type Need } from "./need";
import type { Demand, JobPieces, OrderInput, OrderJob, SizedPieces } from "./orderInput";
import { compareSized, compareText, sizedKey, type SizedItem } from "./sizedItem";

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
  const chosen = new Set(input.jobs.map(({ job }) => job));
  const groups = groupBy(
    input.demands.filter(({ job, quantity }) => chosen.has(job) && quantity > 0),
    sizedKey,
  );
  return [...groups.values()]
    .flatMap((demands) => {
      const [first] = demands;
      if (first === undefined) return [];
      const counts = [...groupBy(demands, ({ job }) => job)].map(([job, ofJob]): JobCount => ({
        job,
        counted: sumOf(ofJob.map(({ quantity }) => quantity)),
        supplied: forJob(standing.supplied, first, job),
        onOrder: forJob(standing.orderedForJobs, first, job),
      }));
      const isCut = demands.some((demand) => demand.isCut);
      const free: FreeStock = isCut
        ? { onHand: pieces(0), onOrder: pieces(0) }
        : { onHand: freeOf(standing.onHand, first), onOrder: freeOf(standing.onOrder, first) };
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

const freeOf = (stock: readonly SizedPieces[], sized: SizedItem): Pieces =>
  sumOf(stock.filter((each) => sizedKey(each) === sizedKey(sized)).map((each) => each.pieces));

const forJob = (all: readonly JobPieces[], sized: SizedItem, job: string): Pieces =>
  freeOf(
    all.filter((each) => each.job === job),
    sized,
  );

const sumOf = (counts: readonly Pieces[]): Pieces =>
  pieces(counts.reduce<number>((sum, count) => sum + count, 0));

function groupBy<T>(all: readonly T[], keyOf: (each: T) => string): ReadonlyMap<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const each of all) {
    const group = groups.get(keyOf(each));
    if (group === undefined) groups.set(keyOf(each), [each]);
    else group.push(each);
  }
  return groups;
}
