/** What the jobs, and the offcuts, get of so many pieces of each line of an order. */
import { pieces } from "../../base/units";
import { cutGoods } from "./cutGoods";
import { groupBy } from "../../base/groupBy";
import { looseNeeds } from "./looseNeeds";
import type { OrderRecord } from "./orderRecord";
import { sizedKey } from "../sizedItem";
import { addUp, jobKeyOf, type JobPieces, type SizedPieces } from "../sizedPieces";

export type Goods = {
  readonly gives: readonly JobPieces[];
  readonly offcuts: readonly SizedPieces[];
  /** What is made of each thing that is bought; offcuts are nobody's. */
  readonly made: ReadonlyMap<string, readonly MadePieces[]>;
};
type MadePieces = SizedPieces & { readonly job: string | null };

/** `counts`: by line, pieces for the jobs. */
export function orderGoods(order: OrderRecord, counts: readonly number[]): Goods {
  const there = new Map<string, number>();
  for (const [at, packs] of order.packs.entries()) {
    const key = sizedKey(packs);
    there.set(key, (there.get(key) ?? 0) + (counts[at] ?? 0));
  }
  const made = new Map<string, readonly MadePieces[]>();
  const loose: JobPieces[] = [];
  const barsThere = new Map(there);
  for (const [key, jobs] of looseNeeds(order)) {
    const got = inTurn(jobs, there.get(key) ?? 0);
    const wanted = jobs.reduce((sum, each) => sum + each.pieces, 0);
    const forBars = Math.max(0, (there.get(key) ?? 0) - wanted);
    if (order.cuts === null) barsThere.delete(key);
    else barsThere.set(key, forBars);
    made.set(key, got);
    loose.push(...got);
  }
  const cut = cutGoods(order, barsThere);
  for (const { bar, gives, offcuts } of cut) {
    const key = sizedKey(bar);
    const stock = offcuts.map((each) => ({ ...each, job: null }));
    made.set(key, [...(made.get(key) ?? []), ...gives, ...stock]);
  }
  return {
    gives: addJobPieces([...loose, ...cut.flatMap(({ gives }) => gives)]),
    offcuts: addUp(cut.flatMap(({ offcuts }) => offcuts)),
    made,
  };
}

/** The same thing of the same job as one entry, in the order of the first. */
export const addJobPieces = (all: readonly JobPieces[]): readonly JobPieces[] =>
  [...groupBy(all, (each) => jobKeyOf(each.job, each)).values()].flatMap((same) => {
    const [first] = same;
    const count = same.reduce((sum, each) => sum + each.pieces, 0);
    return first === undefined || count === 0 ? [] : [{ ...first, pieces: pieces(count) }];
  });

function inTurn(jobs: readonly JobPieces[], count: number): readonly JobPieces[] {
  let left = count;
  return jobs.flatMap((each) => {
    const got = Math.min(each.pieces, left);
    left -= got;
    return got === 0 ? [] : [{ ...each, pieces: pieces(got) }];
  });
}
