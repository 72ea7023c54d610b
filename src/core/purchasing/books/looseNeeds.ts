/** What the jobs of an order get of things that it buys and that are not cut. */
import { groupBy } from "../../base/groupBy";
import type { OrderRecord } from "./orderRecord";
import { compareText, sizedKey } from "../sizedItem";
import { jobKeyOf, lessPieces, piecesByKey, type JobPieces } from "../sizedPieces";

/** By thing; of its jobs the one with the earliest need-by date first, then by name. */
export function looseNeeds(order: OrderRecord): ReadonlyMap<string, readonly JobPieces[]> {
  const taken = [...order.fromShelf, ...order.fromOrders].flatMap(({ job, ...each }) =>
    job === null ? [] : [{ ...each, job }],
  );
  const ofJob = (each: JobPieces): string => jobKeyOf(each.job, each);
  const bought = groupBy(lessPieces(order.covers, taken, ofJob), sizedKey);
  const bars = piecesByKey(
    (order.cuts ?? []).flatMap(({ isBought, bar, bars: count }) =>
      isBought ? [{ ...bar, pieces: count }] : [],
    ),
    sizedKey,
  );
  const due = new Map(order.jobs.map(({ job, needBy }) => [job, needBy ?? Infinity]));
  const dueOf = ({ job }: JobPieces): number => due.get(job) ?? Infinity;
  const needs = new Map<string, readonly JobPieces[]>();
  for (const [key, lines] of groupBy(order.packs, sizedKey)) {
    const forJobs = lines.reduce(
      (sum, { count, packSize, leftOver }) => sum + count * packSize - leftOver,
      0 - (bars.get(key) ?? 0),
    );
    const jobs = bought.get(key) ?? [];
    const wanted = jobs.reduce((sum, each) => sum + each.pieces, 0);
    // An order kept before cuts were on record: its bars are told by pieces that do not add up.
    if (forJobs <= 0 || (order.cuts === null && wanted !== forJobs)) continue;
    needs.set(
      key,
      jobs.toSorted((a, b) => {
        const [one, other] = [dueOf(a), dueOf(b)];
        return one === other ? compareText(a.job, b.job) : one - other;
      }),
    );
  }
  return needs;
}
