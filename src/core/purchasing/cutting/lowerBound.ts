/**
 * What no cut plan can cost less than, proven in whole numbers.
 *
 * Give every piece any value from zero up. If no bar that can be bought holds pieces worth more
 * than `most` times its price, then every plan's new bars cost at least (the value of all pieces)
 * / `most`. A bar on hand carries at most the value of its best filling for nothing, which comes
 * off first. Both are the weak duality of Gilmore and Gomory's linear programme (1961), so the
 * bound holds whatever the values are; good values only make it high. The best fillings come from
 * an exact knapsack, so neither a solver's rounding nor its early stop can spoil it.
 */
import { greatestCommonDivisor } from "../../base/exact";
import { cents, type Cents } from "../../base/units";

import type { CutModel } from "./cutModel";
import { bestFillings, type Fillings } from "./knapsack";

export type LowerBound = {
  readonly cost: Cents;
  /** The whole value of each length that proves it. */
  readonly values: readonly number[];
};

/** The bound that whole, non-negative `values` prove for cutting `demands`. */
export function lowerBound(
  model: CutModel,
  demands: readonly number[],
  values: readonly number[],
  fillings: Fillings = boundFillings(model, values),
): LowerBound {
  const worth = model.kinds.map((_, index) => fillings.value(model.boundGrid.rooms[index] ?? 0));
  let value = values.reduce(
    (sum, each, index) => sum + BigInt(each) * BigInt(demands[index] ?? 0),
    0n,
  );
  // The bar that holds most value for its price, as the fraction dear / price.
  let dear = 0n;
  let price = 1n;
  model.kinds.forEach((kind, index) => {
    const most = BigInt(worth[index] ?? 0);
    if (kind.from === "onHand") value -= BigInt(kind.most) * most;
    else if (most * price > dear * BigInt(kind.price)) {
      dear = most;
      price = BigInt(kind.price);
    }
  });
  const cost = value <= 0n || dear === 0n ? 0n : divideUp(value * price, dear);
  return { cost: cents(roundUpCost(model, Number(cost))), values };
}

/** The fillings that a bound needs: in steps that never make a piece larger than it is. */
export const boundFillings = (model: CutModel, values: readonly number[]): Fillings =>
  bestFillings(model.boundGrid.sizes, values, model.demands, Math.max(0, ...model.boundGrid.rooms));

/**
 * Every plan's cost is a sum of stock prices, so a multiple of their greatest common divisor: a
 * bound goes up to the next one. With one stock length that means whole bars.
 */
export function roundUpCost(model: CutModel, cost: number): number {
  const step = model.kinds.reduce((divisor, kind) => greatestCommonDivisor(kind.price, divisor), 0);
  return step === 0 ? cost : Math.ceil(cost / step) * step;
}

/**
 * The best of the bounds that need no solver: by material (a piece's value is its size), by count,
 * and by large pieces, which share no bar (values 2, 1 and 0 as in Martello and Toth's bound L2).
 */
export function plainBound(model: CutModel): LowerBound {
  const widest = model.kinds.reduce((most, kind) => Math.max(most, kind.room), 0);
  const cuts = [2, 3, 4, 6].map((parts) => widest / parts);
  const candidates = [
    model.sizes,
    model.sizes.map(() => 1),
    ...cuts.map((cut) =>
      model.sizes.map((size) => (size > widest - cut ? 2 : size >= cut && size > 0 ? 1 : 0)),
    ),
  ];
  const [first = lowerBound(model, model.demands, []), ...others] = candidates.map((values) =>
    lowerBound(model, model.demands, values),
  );
  return others.reduce((best, next) => (next.cost > best.cost ? next : best), first);
}

const divideUp = (a: bigint, b: bigint): bigint => (a + b - 1n) / b;
