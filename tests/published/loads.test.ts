/** Moving loads and beams against published formulas and worked examples. */
import { describe, expect, test } from "@jest/globals";
import { inches, pounds } from "../../src/core/base/units";
import {
  hangerLoad,
  largestDeflection,
  largestMoment,
  momentAt,
  type MovingLeaf,
} from "../../src/core/pricing/loads/movingLoads";

/** A leaf that rolls over a whole span and off both ends of it. */
const rollingOver = (loads: [number, number], spacing: number, span: number): MovingLeaf => ({
  loads: [pounds(loads[0]), pounds(loads[1])],
  spacing: inches(spacing),
  from: inches(-spacing - span),
  to: inches(2 * span),
});
const spanOf = (length: number) => ({ from: inches(0), to: inches(length) });
const supports = (length: number) => [inches(0), inches(length)];

describe("two equal moving loads on a simple beam", () => {
  // AISC Steel Construction Manual, Table 3-23, two equal concentrated moving loads (from memory):
  // M = P / (2 l) (l - a / 2)^2 for a < 0.586 l, else P l / 4; R = P (2 - a / l).
  test.each([
    { load: 500, spacing: 24, span: 96, moment: 18_375, reaction: 875 },
    { load: 500, spacing: 60, span: 96, moment: 12_000, reaction: 687.5 },
  ])("$load lb, wheels $spacing in apart, span $span in", (example) => {
    const leaf = rollingOver([example.load, example.load], example.spacing, example.span);
    expect(largestMoment(leaf, spanOf(example.span))).toBeCloseTo(example.moment, 9);
    expect(hangerLoad(leaf, supports(example.span), 0)).toBeCloseTo(example.reaction, 9);
    expect(hangerLoad(leaf, supports(example.span), 1)).toBeCloseTo(example.reaction, 9);
  });

  test("the formula changes at a = (2 - sqrt 2) l", () => {
    for (const share of [0.1, 0.3, 0.5, 0.58, 0.59, 0.7, 0.9, 0.99]) {
      const [load, span] = [1000, 120];
      const spacing = share * span;
      const near = (load / (2 * span)) * (span - spacing / 2) ** 2;
      const published = share < 2 - Math.SQRT2 ? near : (load * span) / 4;
      const leaf = rollingOver([load, load], spacing, span);
      expect(largestMoment(leaf, spanOf(span))).toBeCloseTo(published, 6);
    }
  });
});

describe("two unequal moving loads on a simple beam", () => {
  // J. M. Gere, Mechanics of Materials, 6th edition, problem 4.5-30: wheel loads P and 2P, P = 10 kN,
  // d = 2.4 m, L = 12 m: V max = 28 kN, M max = 78.4 kN m (the moment: value from memory).
  test("wheel loads 10 and 20, 2.4 apart, span 12", () => {
    const leaf = rollingOver([10, 20], 2.4, 12);
    expect(hangerLoad(leaf, supports(12), 1)).toBeCloseTo(28, 9);
    expect(largestMoment(leaf, spanOf(12))).toBeCloseTo(78.4, 9);
  });
});

describe("deflection of a simple beam", () => {
  const [modulus, inertia, span] = [29_000_000, 0.5, 96];
  const stiffness = modulus * inertia;

  test("one load at mid-span sinks it P l^3 / (48 E I)", () => {
    // AISC Table 3-23, concentrated load at center.
    const leaf = rollingOver([300, 0], 10, span);
    const published = (300 * span ** 3) / (48 * stiffness);
    expect(largestDeflection(leaf, spanOf(span), stiffness)).toBeCloseTo(published, 9);
  });

  test("two equal loads placed alike sink it P a (3 l^2 - 4 a^2) / (24 E I)", () => {
    // AISC Table 3-23, two equal concentrated loads symmetrically placed.
    const leaf = rollingOver([300, 300], 40, span);
    const fromEnd = (span - 40) / 2;
    const published = ((300 * fromEnd) / (24 * stiffness)) * (3 * span ** 2 - 4 * fromEnd ** 2);
    expect(largestDeflection(leaf, spanOf(span), stiffness)).toBeCloseTo(published, 9);
  });
});

test("the moment at a section is P a b / l with one load on it", () => {
  // AISC Table 3-23, concentrated load at any point.
  const leaf = rollingOver([400, 0], 10, 100);
  expect(momentAt(leaf, spanOf(100), inches(30))).toBeCloseTo((400 * 30 * 70) / 100, 9);
});
