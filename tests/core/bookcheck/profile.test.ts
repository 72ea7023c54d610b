import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { readFormula } from "../../../src/core/formulas/read";
import { isFormulaError, missingError, type FormulaValue } from "../../../src/core/formulas/value";
import { nodeProfile, type Sight } from "../../../src/core/bookcheck/profile/nodeProfile";
import {
  constantProfile,
  numberProfile,
  profileAt,
  sameOutcome,
  type Profile,
} from "../../../src/core/bookcheck/profile/profile";
import { chartLookup, type Chart } from "../../../src/core/kitbook/chart";
import { compiledFrom, scopeOf } from "../formulas/running";
import { shapes, textOf } from "../formulas/printing";

const steps: Chart = {
  name: "steps",
  match: "next up",
  twoWay: false,
  entries: [6, 12, 20].map((down) => ({
    down,
    across: null,
    value: `S${down}`,
    place: null,
    basis: "",
  })),
};
const exact: Chart = { ...steps, name: "exact", match: "exact" };
const charts = { steps: chartLookup(steps), exact: chartLookup(exact) };

/** `x` runs; the others stand still. */
const others = { count: 3, blank: null, floor: "wood", gone: missingError("Gone"), yes: true };
const values = { x: 0, ...others };
const domain = { from: -40, to: 60 };
const sight: Sight = {
  domain,
  profileOf: (name) =>
    name === "x"
      ? numberProfile
      : constantProfile(new Map(Object.entries(others)).get(name) ?? null),
  chart: (name) => charts[name as keyof typeof charts],
  chartKeys: () => ({ down: [6, 12, 20], across: [] }),
};

function profileOf(text: string): Profile {
  const read = readFormula(text);
  if (!read.ok) throw new Error(`${text}: ${read.error.message}`);
  return nodeProfile(text, read.value.tree, sight);
}

const evaluator = (text: string) => {
  const compiled = compiledFrom(text, scopeOf(values, charts));
  return (x: number): FormulaValue =>
    compiled.evaluate(
      Object.values({ ...values, x }).map((value) => [value]),
      0,
    );
};

/** Alike as far as a person could tell: lines are worked out by another way than the formula goes. */
const alike = (one: FormulaValue, other: FormulaValue): boolean =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(one), Math.abs(other))
    : isFormulaError(one) || isFormulaError(other)
      ? isFormulaError(one) && isFormulaError(other) && one.code === other.code
      : sameOutcome(one, other);

describe("the cuts of", () => {
  test.each([
    ["x + 1", []],
    ["x <= 5", [5]],
    ["IF(x <= 5, 1, 2)", [5]],
    ["IF(x <= 5, 1, 1)", []],
    ["ROUNDUP(x / 20, 0)", [-40 + 20, 0, 20, 40]],
    ["ROUND(x, -1) > 0", [5]],
    ["MAX(0, x - 10)", [10]],
    ["MIN(x, blank, 4)", [4]],
    ["ABS(x - 7) < 2", [5, 9]],
    ["AND(x > 5, x < 5)", []],
    ["AND(x >= 5, x <= 5)", [5]],
    ['CHART("steps", x)', [6, 12, 20]],
    ['CHART("exact", x)', [6, 12, 20]],
    ["x > floor", []],
    ["IF(gone > x, 1, 2)", []],
    ["IF(ISBLANK(gone), x > 3, gone)", [3]],
    ["SWITCH(x, 1, 10, 2, 20, 0)", [1, 2]],
    ["10 / x > 0", [0]],
    ["MOD(x, 25) > 20", [-30 + 25, -5 - 25, 0, -25, 20, 25, 45, 50]],
    ['LEFT(floor, 1) = "w"', []],
    ["x * x > 100", []],
  ])("%s", (text, cuts) => {
    expect(profileOf(text).cuts).toEqual([...new Set(cuts)].sort((one, other) => one - other));
  });
});

test("a curve is unclear, and so is a text made of the number", () => {
  for (const text of ["x * x > 100", "x ^ 2", '"W" & x', "LEN(x)", "1 / x > 1"]) {
    expect(profileOf(text).between.some(({ kind }) => kind === "unclear")).toBe(true);
  }
});

test("a choice is clear where the unclear branch is not chosen", () => {
  expect(profileOf("IF(x < 5, x * x, 1)").between.map(({ kind }) => kind)).toEqual([
    "unclear",
    "same",
  ]);
});

test("whatever the formula, its profile says what the formula says wherever it is clear", () => {
  const points = fc.array(
    fc.oneof(
      fc.integer({ min: -150, max: 230 }).map((quarter) => quarter / 4),
      // Numbers that show as a quarter without being one are equal to it here and not there.
      fc
        .double({ min: -39, max: 59, noNaN: true })
        .filter((x) => Math.abs(4 * x - Math.round(4 * x)) > 1e-6),
    ),
    { minLength: 8, maxLength: 8 },
  );
  let clear = 0;
  fc.assert(
    fc.property(shapes(["x", "x", "x", ...Object.keys(others)]), points, (shape, tried) => {
      const text = textOf(shape);
      // Beside so large a number everything that a door has is lost in rounding.
      fc.pre(!text.includes("1e+21"));
      const profile = profileOf(text);
      const evaluate = evaluator(text);
      for (const x of tried) {
        const isNearCut = profile.cuts.some((cut) => cut !== x && Math.abs(cut - x) < 1e-9);
        const told = profileAt(profile, x);
        if (told === undefined || isNearCut) continue;
        clear += 1;
        const found = evaluate(x);
        if (!alike(told, found))
          throw new Error(`${text} at ${x}: ${JSON.stringify([told, found])}`);
      }
    }),
    { numRuns: 6_000 },
  );
  expect(clear).toBeGreaterThan(6_000);
});
