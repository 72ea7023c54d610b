/** Whose cost a pack is: each amount shared over the jobs and the firm's stock, to the cent. */
import { cents, type Cents } from "../../base/units";
import { shareByLargestRemainder } from "../../money/share";
import { compareText } from "../sizedItem";

/** A part of a cost; `job` is `null` for what goes to stock. */
export type Share = { readonly job: string | null; readonly cost: Cents };

/** What a job, or stock, gets of a thing: pieces, inches or money. Below a thousand million. */
export type ShareWeight = { readonly job: string | null; readonly weight: number };

/** Sorts behind every name, so that of equal parts a job gets the odd cent before stock does. */
const stockName = "\u{10FFFF}";

/**
 * The cost in proportion to the weights; the shares add up to it exactly. By job name, stock last;
 * whoever weighs nothing has no share. The order of the weights changes nothing. Where nothing has
 * a weight, the whole is stock's.
 */
export function shareCost(cost: Cents, weights: readonly ShareWeight[]): readonly Share[] {
  const byJob = new Map<string | null, number>();
  for (const { job, weight } of weights) {
    if (weight > 0) byJob.set(job, (byJob.get(job) ?? 0) + weight);
  }
  if (byJob.size === 0) return cost === 0 ? [] : [{ job: null, cost }];
  const entries = [...byJob].sort(([a], [b]) => compareJobs(a, b));
  const shares = shareByLargestRemainder(
    cost,
    entries.map(([, weight]) => weight),
    entries.map(([job]) => job ?? stockName),
  );
  return entries.map(([job], index) => ({ job, cost: shares[index] ?? cents(0) }));
}

/** Shares of several costs as one list, by job name, stock last. */
export function addShares(lists: readonly (readonly Share[])[]): readonly Share[] {
  const byJob = new Map<string | null, number>();
  for (const { job, cost } of lists.flat()) byJob.set(job, (byJob.get(job) ?? 0) + cost);
  return [...byJob]
    .sort(([a], [b]) => compareJobs(a, b))
    .map(([job, cost]) => ({ job, cost: cents(cost) }));
}

const compareJobs = (a: string | null, b: string | null): number =>
  compareText(a ?? stockName, b ?? stockName);
