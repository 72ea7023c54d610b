/**
 * Diving: from the linear programme's fractions to whole bars. Take the whole part, fix the bar
 * with the largest fraction, solve again for what is left, and so on to the end.
 */
import type { ColumnPool } from "./columns";
import type { CutModel } from "./cutModel";
import {
  costOf,
  cutColumns,
  isDone,
  priceOf,
  restAfter,
  wholeRest,
  type Cut,
  type Rest,
} from "./cuts";
import { firstFit } from "./firstFit";
import { roundUpCost } from "./lowerBound";

/** New columns are made for what is left, at most so many times per bar that is fixed. */
const rounds = 20;

/** What the whole parts of the quantities cut. */
export const cutWholeParts = (
  rest: Rest,
  pool: ColumnPool,
  quantities: readonly number[],
): readonly Cut[] =>
  cutColumns(
    rest,
    pool.columns,
    quantities.map((quantity) => Math.floor(quantity + 1e-6)),
  );

/**
 * Yields a whole plan per step: what is fixed, and first-fit for the rest. Gives up where even the
 * fractions are no cheaper than `target` says. `detour` 1 takes the second largest fraction at the
 * first step, 2 at the second step and so on; 0 never does.
 */
export function* dive(
  model: CutModel,
  pool: ColumnPool,
  detour: number,
  target: () => number,
): Generator<readonly Cut[], void> {
  const cuts: Cut[] = [];
  let rest = wholeRest(model);
  for (let depth = 1; !isDone(rest); depth += 1) {
    const quantities = solveRest(pool, rest);
    if (quantities === null) return;
    const fractions = pool.columns.reduce(
      (sum, column, index) => sum + (quantities[index] ?? 0) * priceOf(model, column),
      0,
    );
    // A thousandth of a cent is less than any price and more than the solver's rounding.
    if (roundUpCost(model, costOf(model, cuts) + fractions - 1e-3) >= target()) return;
    const whole = depth === detour ? [] : cutWholeParts(rest, pool, quantities);
    const taken =
      whole.length > 0 ? whole : cutLargest(rest, pool, quantities, depth === detour ? 1 : 0);
    if (taken.length === 0) return;
    cuts.push(...taken);
    rest = restAfter(rest, taken);
    yield [...cuts, ...firstFit(model, rest)];
  }
}

function solveRest(pool: ColumnPool, rest: Rest): readonly number[] | null {
  let solved = pool.solve(rest);
  for (let round = 0; solved !== null && round < rounds; round += 1) {
    if (pool.add(pool.price(solved.answer, rest).columns) === 0) break;
    solved = pool.solve(rest);
  }
  return solved?.quantities ?? null;
}

/** One bar of the column whose quantity has the given rank, from zero; of the largest where there are fewer. */
function cutLargest(
  rest: Rest,
  pool: ColumnPool,
  quantities: readonly number[],
  rank: number,
): readonly Cut[] {
  const ranked = quantities
    .map((quantity, index) => ({ quantity, index }))
    .filter(({ quantity }) => quantity > 1e-6)
    .sort((a, b) => b.quantity - a.quantity || a.index - b.index);
  const chosen = ranked[rank] ?? ranked[0];
  const column = chosen === undefined ? undefined : pool.columns[chosen.index];
  return column === undefined ? [] : cutColumns(rest, [column], [1]);
}
