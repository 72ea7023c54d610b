import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import {
  learningInWords,
  shareOfTheFirst,
  timesTheFirst,
  type Learning,
} from "../../../src/core/pricing/learning";

const unit = (rate: number): Learning => ({ model: "unit", rate });
const average = (rate: number): Learning => ({ model: "average", rate });

describe("the unit curve", () => {
  test.each([
    // By definition: each doubling takes 80 % of the time of the repeat before the doubling.
    [0.8, 1, 1],
    [0.8, 2, 0.8],
    [0.8, 4, 0.64],
    [0.8, 8, 0.512],
    // W. J. Stevenson, Operations Management, table 7S.1 of unit times, as used in its solution manual.
    [0.9, 20, 0.634],
  ])("at %d: repeat %d takes %d of the first", (rate, repeat, share) => {
    expect(shareOfTheFirst(repeat, unit(rate))).toBeCloseTo(share, 3);
  });

  test("adds its repeats up", () => {
    expect(timesTheFirst(4, unit(0.8))).toBeCloseTo(1 + 0.8 + 0.7021 + 0.64, 4);
  });
});

describe("the cumulative average curve", () => {
  // R. M. Wideman, "Learning Curve Mathematics", appendix 2: at 80 % the first two average 80 %, so
  // the second takes 60 %; the first four average 64 %.
  test("at 80 %: two average 80 %, the second takes 60 %, four average 64 %", () => {
    expect(timesTheFirst(2, average(0.8)) / 2).toBeCloseTo(0.8, 12);
    expect(shareOfTheFirst(2, average(0.8))).toBeCloseTo(0.6, 12);
    expect(timesTheFirst(4, average(0.8)) / 4).toBeCloseTo(0.64, 12);
  });
});

describe("any curve", () => {
  const curve = fc.record({
    model: fc.constantFrom("unit", "average"),
    rate: fc.integer({ min: 51, max: 100 }).map((hundredths) => hundredths / 100),
  });
  test("adds repeats that take something each, and none longer than the one before", () => {
    fc.assert(
      fc.property(curve, fc.integer({ min: 2, max: 60 }), (learning, count) => {
        const last = timesTheFirst(count, learning) - timesTheFirst(count - 1, learning);
        expect(last).toBeCloseTo(shareOfTheFirst(count, learning), 9);
        expect(last).toBeGreaterThan(0);
        expect(last).toBeLessThanOrEqual(shareOfTheFirst(count - 1, learning) + 1e-9);
      }),
    );
  });

  test.each([0, 1])("takes %d of the first for as many", (count) => {
    expect(timesTheFirst(count, unit(0.8))).toBe(count);
    expect(timesTheFirst(count, average(0.8))).toBe(count);
  });

  test("without learning each repeat takes as long as the first", () => {
    expect(timesTheFirst(7, null)).toBe(7);
    expect(timesTheFirst(7, unit(1))).toBe(7);
  });
});

test("a curve is named with its author", () => {
  expect(learningInWords(average(0.875))).toBe("87.5 % cumulative average curve (Wright)");
});
