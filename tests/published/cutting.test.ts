/** Cut plans against published instances. Sources stand with the instances. */
import { beforeAll, describe, expect, test } from "@jest/globals";
import { loadHighsSolver } from "../../src/adapters/highs/highsSolver";
import { provenCost } from "../core/purchasing/cutting/checkBound";
import { checkCutPlan } from "../../src/core/purchasing/cutting/checkCutPlan";
import { cutPlan } from "../../src/core/purchasing/cutting/cutPlan";
import type { CutPlan, CutProblem } from "../../src/core/purchasing/cutting/cutProblem";
import type { Solver } from "../../src/core/purchasing/cutting/solver";
import {
  thirteenWidths,
  tripletInstance,
  uniformInstance,
} from "../core/purchasing/cutting/instances";

let highs: Solver | null = null;
beforeAll(async () => {
  highs = await loadHighsSolver();
});

/** The plan, checked by separate code, bound and all. */
function checkedPlan(problem: CutProblem, solver: Solver | null): CutPlan {
  const plan = cutPlan(problem, { solver });
  expect(checkCutPlan(problem, plan)).toEqual([]);
  expect(plan.lowerBound).toBeLessThanOrEqual(provenCost(problem, plan) ?? 0);
  return plan;
}

describe("the example of thirteen widths", () => {
  test("takes 73 rolls, with a proof", () => {
    expect(highs).not.toBeNull();
    const plan = checkedPlan(thirteenWidths, highs);
    expect(plan.bars).toHaveLength(73);
    expect(plan).toMatchObject({ cost: 730_000, lowerBound: 730_000, proven: true });
  });

  test("takes little more without a solver, and the bound of 73 by material alone holds", () => {
    const plan = checkedPlan(thirteenWidths, null);
    expect(plan.lowerBound).toBe(730_000);
    expect(plan.bars.length).toBeLessThanOrEqual(75);
  });
});

describe("instances by Falkenauer's recipe", () => {
  test.each([1, 2, 3])("of 120 even sizes, seed %i, are cut with a proof", (seed) => {
    expect(checkedPlan(uniformInstance(120, seed), highs).proven).toBe(true);
  });

  test.each([1, 2])("of 60 triplets, seed %i, fill 20 bars to the last step", (seed) => {
    const plan = checkedPlan(tripletInstance(60, seed), highs);
    expect(plan.bars).toHaveLength(20);
    expect(plan.proven).toBe(true);
  });
});
