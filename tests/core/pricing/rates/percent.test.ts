import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { cents } from "../../../../src/core/base/units";
import { roundPrice } from "../../../../src/core/pricing/margin";
import {
  percent,
  percentOfShare,
  percentText,
  ratioText,
  readPercent,
  shareOf,
  shareText,
} from "../../../../src/core/pricing/rates/percent";

describe("a typed percentage", () => {
  test.each([
    ["12.5", 125_000, false],
    ["12.5 %", 125_000, false],
    [" 12,5% ", 125_000, false],
    ["\uff11\uff12%", 120_000, false],
    ["-3%", -30_000, false],
    ["\u22123 %", -30_000, false],
    ["0", 0, false],
    [".25", 2_500, false],
    ["33.33333", 333_333, false],
    // A number is what the spreadsheet keeps.
    [0.125, 125_000, false],
    [0.1 + 0.2, 300_000, false],
    [1, 1_000_000, false],
    [-0.05, -50_000, false],
    // So large a one was typed into a cell that shows no percentages.
    [25, 250_000, true],
    [2, 20_000, true],
  ])("%j", (typed, value, doubt) => {
    expect(readPercent(typed)).toEqual({ percent: value, doubt });
  });

  test.each(["", "abc", "12 x", "%", "12%%", "--3", NaN, Infinity, "1e400"])(
    "%j is none",
    (typed) => {
      expect(readPercent(typed)).toBeNull();
    },
  );

  test("any text is answered", () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const read = readPercent(text);
        expect(read === null || Number.isSafeInteger(read.percent)).toBe(true);
      }),
    );
  });

  test("is the same whether kept as a share or as text", () => {
    fc.assert(
      fc.property(fc.integer({ min: -999_999, max: 999_999 }), (value) => {
        const typed = percent(value);
        expect(readPercent(shareOf(typed))?.percent).toBe(value);
        expect(readPercent(percentText(typed))?.percent).toBe(value);
        expect(percentOfShare(shareOf(typed))).toBe(value);
      }),
    );
  });
});

describe("a ratio as text", () => {
  test.each([
    [2500, 12_500, 1, "20.0"],
    [2500, 10_000, 0, "25"],
    [1, 3, 2, "33.33"],
    [-1, 3, 2, "-33.33"],
    [1, 800, 2, "0.13"], // 0.125 %
    [0, 5, 2, "0.00"],
    [5, -10, 1, "-50.0"],
  ])("%d of %d to %d places is %s", (part, whole, places, text) => {
    expect(ratioText(cents(part), cents(whole), places)).toBe(text);
  });

  test("is none without a whole", () => {
    expect(ratioText(cents(5), cents(0), 1)).toBeNull();
  });
});

describe("a round price", () => {
  test.each([
    [123_456, 0, "up", 123_456],
    [123_401, 1, "up", 123_500],
    [123_400, 1, "up", 123_400],
    [123_449, 1, "nearest", 123_400],
    [123_450, 1, "nearest", 123_500],
    [123_400, 5, "nearest", 123_500],
    [123_200, 5, "nearest", 123_000],
    [123_001, 10, "up", 124_000],
    [123_456, 50, "nearest", 125_000],
    [0, 10, "up", 0],
    [-123_456, 10, "up", -123_000],
    [-123_500, 10, "nearest", -124_000],
  ] as const)("%d cents by %d %s is %d", (price, step, way, rounded) => {
    expect(roundPrice(cents(price), { step, way })).toBe(rounded);
  });
});

test("a share is written as a decimal, exactly", () => {
  const texts = [
    shareText(cents(1), cents(3), 6),
    shareText(cents(-1), cents(4), 2),
    shareText(cents(0), cents(7), 3),
    shareText(cents(1), cents(0), 6),
    shareText(cents(24_001), cents(100_000), 4),
  ];
  expect(texts).toEqual(["0.333333", "-0.25", "0.000", null, "0.2400"]);
});
