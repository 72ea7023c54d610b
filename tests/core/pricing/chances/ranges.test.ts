import { describe, expect, test } from "@jest/globals";
import { randomFromSeed } from "../../../../src/core/pricing/chances/randomNumbers";
import {
  drawFrom,
  rangeFault,
  rangeMean,
  type Range,
} from "../../../../src/core/pricing/chances/ranges";

const draws = 40_000;

function drawn(range: Range, seed = 2026): Float64Array {
  const random = randomFromSeed(seed);
  return Float64Array.from({ length: draws }, () => drawFrom(range, random)).sort();
}
const meanOf = (values: Float64Array) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const varianceOf = (values: Float64Array) => {
  const mean = meanOf(values);
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
};
const quantile = (values: Float64Array, share: number) => values[Math.floor(share * draws)] ?? NaN;

/** The closed forms, each of them textbook: mean, variance, and the inverse of the distribution. */
type Known = { range: Range; mean: number; variance: number; inverse: (share: number) => number };
const known: readonly Known[] = [
  {
    range: { kind: "uniform", low: 0.8, high: 1.4 },
    mean: 1.1,
    variance: 0.6 ** 2 / 12,
    inverse: (share) => 0.8 + 0.6 * share,
  },
  {
    range: { kind: "triangular", low: 0.9, likely: 1, high: 1.5 },
    mean: (0.9 + 1 + 1.5) / 3,
    variance: (0.9 ** 2 + 1 + 1.5 ** 2 - 0.9 * 1 - 0.9 * 1.5 - 1 * 1.5) / 18,
    inverse: (share) =>
      share < 1 / 6 ? 0.9 + Math.sqrt(share * 0.6 * 0.1) : 1.5 - Math.sqrt((1 - share) * 0.6 * 0.5),
  },
  {
    // Beta(3, 3) on 0 to 1: F(x) = x^3 (10 - 15 x + 6 x^2).
    range: { kind: "pert", low: 0, likely: 0.5, high: 1 },
    mean: 0.5,
    variance: 1 / 28,
    inverse: (share) => inverseOf((x) => x ** 3 * (10 - 15 * x + 6 * x ** 2), share),
  },
  {
    // Beta(1, 5) on 1 to 2: F = 1 - (2 - x)^5.
    range: { kind: "pert", low: 1, likely: 1, high: 2 },
    mean: 7 / 6,
    variance: 5 / 252,
    inverse: (share) => 2 - (1 - share) ** (1 / 5),
  },
  {
    range: { kind: "normal", mean: 1, deviation: 0.05 },
    mean: 1,
    variance: 0.05 ** 2,
    // Quantiles of the standard normal at the shares tested below.
    inverse: (share) => 1 + 0.05 * ({ 0.1: -1.281552, 0.5: 0, 0.9: 1.281552 }[share] ?? NaN),
  },
];

/** Halves its way to where an increasing function on 0 to 1 reaches `share`. */
function inverseOf(distribution: (x: number) => number, share: number): number {
  let [low, high] = [0, 1];
  for (let turn = 0; turn < 60; turn += 1) {
    const middle = (low + high) / 2;
    if (distribution(middle) < share) low = middle;
    else high = middle;
  }
  return low;
}

describe.each(known)("draws from $range", ({ range, mean, variance, inverse }) => {
  const values = drawn(range);
  const deviation = Math.sqrt(variance);

  test("average to the closed form, within five standard errors", () => {
    expect(rangeMean(range)).toBeCloseTo(mean, 12);
    expect(Math.abs(meanOf(values) - mean)).toBeLessThan((5 * deviation) / Math.sqrt(draws));
  });

  test("spread as the closed form", () => {
    expect(Math.abs(varianceOf(values) / variance - 1)).toBeLessThan(0.04);
  });

  test.each([0.1, 0.5, 0.9])("have the closed form's quantile at %d", (share) => {
    expect(Math.abs(quantile(values, share) - inverse(share))).toBeLessThan(0.02 * deviation * 3);
  });
});

test("a range without width is its one figure", () => {
  const point = { low: 1.2, likely: 1.2, high: 1.2 };
  for (const range of [
    { kind: "fixed", value: 1.2 },
    { kind: "uniform", low: 1.2, high: 1.2 },
    { kind: "triangular", ...point },
    { kind: "pert", ...point },
    { kind: "normal", mean: 1.2, deviation: 0 },
  ] satisfies Range[]) {
    expect(new Set(drawn(range))).toEqual(new Set([1.2]));
  }
});

test("a draw from a normal range is never below zero", () => {
  expect(drawn({ kind: "normal", mean: 0.1, deviation: 1 })[0]).toBe(0);
});

describe("a range as typed", () => {
  test.each([
    [{ kind: "uniform", low: 2, high: 1 }, "the low end is above the high end"],
    [{ kind: "triangular", low: 1, likely: 3, high: 2 }, "the likely figure must be between"],
    [{ kind: "pert", low: 1, likely: 0.5, high: 2 }, "the likely figure must be between"],
    [{ kind: "normal", mean: 1, deviation: -1 }, "every figure of a range must be a number"],
    [{ kind: "fixed", value: NaN }, "every figure of a range must be a number"],
  ] satisfies [Range, string][])("%j: %s", (range, fault) => {
    expect(rangeFault(range)).toContain(fault);
  });

  test("is right when its figures ascend", () => {
    for (const { range } of known) expect(rangeFault(range)).toBeNull();
  });
});
