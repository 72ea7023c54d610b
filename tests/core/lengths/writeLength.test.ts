import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { rational } from "../../../src/core/base/rational";
import { inches } from "../../../src/core/base/units";
import { lengthIn, lengthOf, sameLength, type Length } from "../../../src/core/lengths/length";
import { readLength } from "../../../src/core/lengths/readLength";
import {
  fractionDenominators,
  numberStyle,
  writeLength,
  writeSize,
  type FractionDenominator,
  type LengthStyle,
} from "../../../src/core/lengths/writeLength";

const fractions = (denominator: FractionDenominator): LengthStyle => ({
  kind: "feet-inches",
  denominator,
});
const sixtyFourths = (top: number): Length => lengthOf(rational(top, 64));

function readBack(text: string): Length {
  const result = readLength(text, "in");
  if (!result.ok) throw new Error(`${text}: ${result.error.message}`);
  return result.value.length;
}

describe("feet, inches and fractions", () => {
  test.each<[number, FractionDenominator, string]>([
    [84, 16, `7'-0"`],
    [84.5, 16, `7'-0 1/2"`],
    [90.5, 16, `7'-6 1/2"`],
    [90.75, 64, `7'-6 3/4"`],
    [6.5, 16, `6 1/2"`],
    [0.5, 16, `1/2"`],
    [0, 16, `0"`],
    [12, 16, `1'-0"`],
    [12.5, 16, `1'-0 1/2"`],
    [-84.5, 16, `-7'-0 1/2"`],
    [-0.001, 16, `0"`],
    // Carried.
    [11.984375, 16, `1'-0"`],
    [83.99, 16, `7'-0"`],
    [95.96875, 16, `8'-0"`],
    // Ties go away from zero.
    [84.03125, 16, `7'-0 1/16"`],
    [84.5, 1, `7'-1"`],
    [-84.5, 1, `-7'-1"`],
    [84.49, 1, `7'-0"`],
    [84.5, 2, `7'-0 1/2"`],
    // A double beside the decimal it shows.
    [83.99999999999999, 64, `7'-0"`],
  ])("%d to 1/%d is %s", (value, denominator, expected) => {
    expect(writeLength(inches(value), fractions(denominator))).toBe(expected);
  });

  test("rounds the exact length: 2134 mm is a little over 7'-0 1/64", () => {
    const length = lengthIn(rational(2134), "mm");
    expect(writeLength(length, fractions(64))).toBe(`7'-0 1/64"`);
    expect(writeLength(length, fractions(16))).toBe(`7'-0"`);
  });
});

describe("the other styles", () => {
  test.each<[number, string, string, string]>([
    [84, `84"`, "2133.6 mm", "84"],
    [84.5, `84.5"`, "2146.3 mm", "84.5"],
    [60, `60"`, "1524 mm", "60"],
    [41.3333333333, `41.3333"`, "1049.9 mm", "41.333333"],
    [-1.25, `-1.25"`, "-31.8 mm", "-1.25"],
    [0, `0"`, "0 mm", "0"],
    [-0.00001, `0"`, "0 mm", "-0.00001"],
  ])("%d inches are %s, %s and %s", (value, inchText, metric, number) => {
    expect(writeLength(inches(value), { kind: "inches" })).toBe(inchText);
    expect(writeLength(inches(value), { kind: "mm" })).toBe(metric);
    expect(writeLength(inches(value), numberStyle)).toBe(number);
  });

  test.each(["feet-inches", "inches", "mm", "number"] as const)(
    "a length that is none is still written in the style %s",
    (kind) => {
      const style = kind === "feet-inches" ? fractions(16) : { kind };
      expect(writeLength(inches(1e300), style)).toBe('1e+300"');
      expect(writeLength(inches(-1e6), style)).toBe('-1000000"');
    },
  );
});

describe("sizes", () => {
  test.each<[readonly number[], LengthStyle, string]>([
    [[48, 84], fractions(16), `4'-0" x 7'-0"`],
    [[48, 84], numberStyle, "48 x 84"],
    [[48, 84], { kind: "mm" }, "1219.2 mm x 2133.6 mm"],
    [[96], fractions(16), `8'-0"`],
    [[], numberStyle, ""],
  ])("%j are written together", (lengths, style, expected) => {
    expect(writeSize(lengths.map(inches), style)).toBe(expected);
  });
});

describe("what is written reads back", () => {
  test("the same exact length from sixty-fourths", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6_000_000 }), (top) => {
        const length = sixtyFourths(top);
        expect(sameLength(readBack(writeLength(length, fractions(64))), length)).toBe(true);
      }),
    );
  });

  test("within half of the chosen fraction from any length", () => {
    const any = fc.tuple(fc.integer({ min: 1000, max: 1e8 }), fc.integer({ min: 1, max: 1000 }));
    fc.assert(
      fc.property(any, fc.constantFrom(...fractionDenominators), ([top, bottom], denominator) => {
        const exact = rational(top, bottom);
        fc.pre(exact.numerator / exact.denominator < 999_999);
        const text = writeLength(lengthOf(exact), fractions(denominator));
        fc.pre(text !== '0"');
        const back = readBack(text);
        // |back - exact| <= 1 / (2 denominator), in whole numbers.
        const difference =
          BigInt(back.numerator) * BigInt(exact.denominator) -
          BigInt(exact.numerator) * BigInt(back.denominator);
        const size = difference < 0n ? -difference : difference;
        const bound = BigInt(back.denominator) * BigInt(exact.denominator);
        expect(2n * BigInt(denominator) * size <= bound).toBe(true);
        expect(denominator % back.denominator).toBe(0);
      }),
    );
  });

  test("the same exact length from tenths of a millimetre and ten-thousandths of an inch", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9_999_999 }), (n) => {
        const metric = lengthIn(rational(n, 10), "mm");
        expect(sameLength(readBack(writeLength(metric, { kind: "mm" })), metric)).toBe(true);
        const decimal = lengthOf(rational(n, 10_000));
        expect(sameLength(readBack(writeLength(decimal, { kind: "inches" })), decimal)).toBe(true);
      }),
    );
  });

  test("a length and the double nearest to it are written alike", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6_000_000 }), (top) => {
        const length = sixtyFourths(top);
        for (const style of [
          fractions(64),
          fractions(16),
          { kind: "inches" },
          numberStyle,
        ] as const) {
          expect(writeLength(inches(top / 64), style)).toBe(writeLength(length, style));
        }
      }),
    );
  });
});
