/**
 * Filling bar after bar with the most valuable pieces, where pieces that were hard to place become
 * more valuable for the next pass: sequential value correction (after Belov and Scheithauer, 2007,
 * from memory of the method; the weights are our own). It closes the last gap that rounding leaves,
 * and does well without a solver.
 */
import type { CutModel } from "./cutModel";
import { cutAlike, heldBy, isDone, restAfter, type Cut, type Rest } from "./cuts";
import { bestFillings } from "./knapsack";

/** A long piece is worth a little more than its length; how much changes from pass to pass. */
const powers = [1.02, 1.04, 1.01, 1.08] as const;

/** Yields one way to cut the rest per pass. A piece that no bar is left for is left over. */
export function* fillByValue(
  model: CutModel,
  rest: Rest,
  passes: number,
): Generator<readonly Cut[], void> {
  const values = model.sizes.map((size) => size ** powers[0]);
  for (let pass = 0; pass < passes; pass += 1) {
    yield onePass(model, rest, values, powers[pass % powers.length] ?? 1);
  }
}

/** Cuts the rest once and corrects `values` bar by bar. */
function onePass(model: CutModel, rest: Rest, values: number[], power: number): readonly Cut[] {
  const cuts: Cut[] = [];
  let left = rest;
  while (!isDone(left)) {
    const cut = bestBar(model, left, values);
    if (cut === null) break;
    const room = model.kinds[cut.kind]?.room ?? 0;
    const wasteful = room / heldBy(model, cut.counts);
    cut.counts.forEach((count, index) => {
      const fresh = (model.sizes[index] ?? 0) ** power * wasteful;
      const now = count * cut.times;
      const before = (left.demands[index] ?? 0) + (model.demands[index] ?? 0);
      if (now > 0) values[index] = (before * (values[index] ?? 0) + now * fresh) / (before + now);
    });
    cuts.push(cut);
    left = restAfter(left, [cut]);
  }
  return cuts;
}

/** The bar that holds most value for its price, one on hand before any other. */
function bestBar(model: CutModel, rest: Rest, values: readonly number[]): Cut | null {
  const { sizes, rooms } = model.safeGrid;
  const kinds = model.kinds.flatMap((_, kind) => ((rest.bars[kind] ?? 0) > 0 ? [kind] : []));
  const widest = kinds.reduce((most, kind) => Math.max(most, rooms[kind] ?? 0), 0);
  const fillings = bestFillings(sizes, values, rest.demands, widest);
  let best = { kind: -1, worth: 0 };
  for (const kind of kinds) {
    const price = Math.max(model.kinds[kind]?.price ?? 0, 1e-6);
    const worth = fillings.value(rooms[kind] ?? 0) / price;
    if (worth > best.worth) best = { kind, worth };
  }
  const { kind } = best;
  return kind < 0
    ? null
    : cutAlike(rest, { kind, counts: fillings.counts(rooms[kind] ?? 0) }, Infinity);
}
