/**
 * The search for a cheap cut plan, step by step: each step yields the best so far, so that whoever
 * drives it can show it, and stop whenever it likes.
 */
import { openColumns } from "./columns";
import type { CutModel } from "./cutModel";
import {
  costOf,
  cutColumns,
  isBetter,
  isDone,
  restAfter,
  shrinkBars,
  wholeRest,
  type Cut,
} from "./cuts";
import { cutWholeParts, dive } from "./dive";
import { firstFit } from "./firstFit";
import { plainBound, type LowerBound } from "./lowerBound";
import type { Solver } from "./solver";
import { fillByValue } from "./valueFill";

/** What the search can be doing, in its order. */
export const searchSteps = [
  "first fit",
  "values",
  "columns",
  "rounding",
  "diving",
  "whole",
] as const;
export type SearchStep = (typeof searchSteps)[number];

export type Found = {
  readonly cuts: readonly Cut[];
  readonly cost: number;
  readonly bound: LowerBound;
  readonly step: SearchStep;
};

/** Passes of `fillByValue` over what rounding leaves, and over everything where there is no solver. */
const passes = 10;
/** Passes over everything before the solver begins: often they are enough. */
const firstPasses = 2;
/** Dives before the search tries the columns it has as a whole-number programme. */
const dives = 20;
/** Nodes that the whole-number programme may open. */
const nodes = 5_000;

/**
 * Starts with first-fit and the plain bound, and ends when cost and bound meet or every step is
 * done. Without a solver the bound stays the plain one. The same model gives the same steps, as
 * long as the solver does.
 */
export function* search(
  model: CutModel,
  solver: Solver | null,
  shouldStop: () => boolean,
): Generator<Found, void> {
  const everything = wholeRest(model);
  let best = firstFit(model, everything);
  let bound = plainBound(model);
  let step: SearchStep = "first fit";
  const isProven = (): boolean =>
    costOf(model, best) <= bound.cost && isDone(restAfter(everything, best));
  const found = (): Found => ({ cuts: best, cost: costOf(model, best), bound, step });
  const offer = (cuts: readonly Cut[]): Found => {
    const shrunk = shrinkBars(model, cuts);
    if (isBetter(model, shrunk, best)) best = shrunk;
    return found();
  };
  yield found();

  if (isProven()) return;
  step = "values";
  for (const cuts of fillByValue(model, everything, solver === null ? passes : firstPasses)) {
    yield offer(cuts);
    if (isProven()) return;
  }
  if (solver === null) return;

  const pool = openColumns(model, solver);
  try {
    step = "columns";
    pool.add(best);
    let quantities: readonly number[] = [];
    for (;;) {
      const solved = pool.solve(everything);
      if (solved === null) break;
      quantities = solved.quantities;
      const priced = pool.price(solved.answer, everything);
      if (priced.bound.cost > bound.cost) bound = priced.bound;
      yield found();
      if (isProven()) return;
      if (pool.add(priced.columns) === 0) break;
    }

    step = "rounding";
    const whole = cutWholeParts(everything, pool, quantities);
    const rest = restAfter(everything, whole);
    yield offer([...whole, ...firstFit(model, rest)]);
    for (const cuts of fillByValue(model, rest, passes)) {
      if (isProven()) return;
      yield offer([...whole, ...cuts]);
    }

    step = "diving";
    for (let detour = 0; detour < dives; detour += 1) {
      for (const cuts of dive(model, pool, detour, () => costOf(model, best))) {
        if (isProven()) return;
        yield offer(cuts);
      }
    }
    if (isProven()) return;

    step = "whole";
    const times = pool.solveWhole(everything, { nodes, shouldStop });
    const cuts = times === null ? [] : cutColumns(everything, pool.columns, times);
    yield offer([...cuts, ...firstFit(model, restAfter(everything, cuts))]);
  } finally {
    pool.close();
  }
}
