import { describe, expect, test } from "@jest/globals";
import { usDollar } from "../../../../src/core/money/currency";
import { cutPlan } from "../../../../src/core/purchasing/cutting/cutPlan";
import type { CutPlan, CutProblem } from "../../../../src/core/purchasing/cutting/cutProblem";
import { barGroups, cutPlanWords } from "../../../../src/core/purchasing/cutting/cutWords";
import { problemOf } from "./instances";

const planOf = (problem: CutProblem): CutPlan => cutPlan(problem, { solver: null });

const twoLengths = problemOf({
  cut: [
    [120, 1],
    [70, 1],
  ],
  stock: [
    [120, 1000],
    [70, 600],
  ],
});

test("alike bars are one group, whatever their marks", () => {
  const plan = planOf(
    problemOf({
      cut: [
        [60, 4, "A", "1"],
        [60, 2, "B", "9"],
        [50, 1, "A", "2"],
      ],
      stock: [[120, 10]],
      onHand: [[65, 1]],
    }),
  );
  expect(
    barGroups(plan).map(({ from, length, offcut, bars }) => [from, length, offcut, bars.length]),
  ).toEqual([
    ["onHand", 65, 5, 1],
    ["stock", 120, 0, 2],
    ["stock", 120, 10, 1],
  ]);
});

describe("the sentence about a plan", () => {
  test.each<[string, CutProblem]>([
    ["12 bars; no plan has fewer than 12.", problemOf({ cut: [[61, 12]], stock: [[120, 1000]] })],
    ["1 bar; no plan has fewer than 1.", problemOf({ cut: [[60, 2]], stock: [[120, 1000]] })],
    ["Nothing is cut.", problemOf({ cut: [], stock: [[120, 1000]] })],
    [
      "Cut from bars on hand; none is bought.",
      problemOf({ cut: [[60, 1]], stock: [[120, 1000]], onHand: [[60, 1]] }),
    ],
    ["2 bars for $16.00; no plan costs less.", twoLengths],
  ])("is: %s", (sentence, problem) => {
    expect(cutPlanWords(planOf(problem), usDollar)).toBe(sentence);
  });

  test("says how far a plan is from its bound", () => {
    const plan = planOf(twoLengths);
    const loose = { ...plan, lowerBound: plan.bars[0]?.price ?? plan.cost };
    expect(cutPlanWords(loose, usDollar)).toMatch(
      /^2 bars for \$16.00; no plan costs less than \$6.00 \(166.67 % above that\)\.$/,
    );
  });
});
