import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { greatestCommonDivisor, roundedProduct } from "../../../src/core/base/exact";
import {
  addRational,
  multiplyRational,
  nearestNumber,
  rational,
} from "../../../src/core/base/rational";

const safe = fc.maxSafeInteger();
const above = (most: number) => fc.integer({ min: 1, max: most });

describe("greatestCommonDivisor", () => {
  test.each([
    [12, 18, 6],
    [0, 5, 5],
    [-12, 18, 6],
    [7, 0, 7],
    [2 ** 52, 2 ** 40, 2 ** 40],
  ])("of %d and %d is %d", (a, b, expected) => {
    expect(greatestCommonDivisor(a, b)).toBe(expected);
  });
});

describe("roundedProduct", () => {
  test.each([
    // a, b, divisor, result
    [1, 1, 2, 1],
    [-1, 1, 2, -1],
    [1, 1, 3, 0],
    [-1, 1, 3, 0],
    [5, 1, 2, 3],
    [-5, 1, 2, -3],
    [999_999_999_999, 999_999_999_999, 999_999_999_999, 999_999_999_999],
    // Past 2^53: a double would lose the half.
    [90_071_992_547_409, 1001, 10_010, 9_007_199_254_741],
  ])("%d x %d / %d is %d", (a, b, divisor, expected) => {
    expect(roundedProduct(a, b, divisor)).toBe(expected);
  });

  test("is never farther than a half from the exact quotient, and a half only away from zero", () => {
    fc.assert(
      fc.property(safe, fc.integer(), above(1e12), (a, b, divisor) => {
        const exact = BigInt(a) * BigInt(b);
        const size = exact < 0n ? -exact : exact;
        fc.pre(size / BigInt(divisor) < BigInt(Number.MAX_SAFE_INTEGER));
        const result = roundedProduct(a, b, divisor);
        const distance = 2n * (BigInt(Math.abs(result)) * BigInt(divisor) - size);
        expect(distance).toBeLessThanOrEqual(BigInt(divisor));
        expect(distance).toBeGreaterThan(-BigInt(divisor));
        expect(Object.is(result, -0)).toBe(false);
        expect(result === 0 || Math.sign(result) === Math.sign(a) * Math.sign(b)).toBe(true);
      }),
    );
  });

  test("throws rather than answer with a number that a double does not hold", () => {
    expect(() => roundedProduct(Number.MAX_SAFE_INTEGER, 3, 2)).toThrow(RangeError);
  });
});

describe("rational", () => {
  test("is always in lowest terms", () => {
    expect(rational(6, 8)).toEqual({ numerator: 3, denominator: 4 });
    expect(rational(-6, 8)).toEqual({ numerator: -3, denominator: 4 });
    expect(rational(0, 8)).toEqual({ numerator: 0, denominator: 1 });
  });

  test.each([
    [1, 0],
    [1, -2],
    [0.5, 1],
    [2 ** 53, 1],
    [NaN, 1],
  ])("refuses %d/%d", (top, bottom) => {
    expect(() => rational(top, bottom)).toThrow(RangeError);
  });

  const small = fc.tuple(fc.integer({ min: -1e6, max: 1e6 }), above(1e6));

  test("adds and multiplies exactly", () => {
    fc.assert(
      fc.property(small, small, ([a, b], [c, d]) => {
        const sum = addRational(rational(a, b), rational(c, d));
        expect(BigInt(sum.numerator) * BigInt(b) * BigInt(d)).toBe(
          (BigInt(a) * BigInt(d) + BigInt(c) * BigInt(b)) * BigInt(sum.denominator),
        );
        const product = multiplyRational(rational(a, b), rational(c, d));
        expect(BigInt(product.numerator) * BigInt(b) * BigInt(d)).toBe(
          BigInt(a) * BigInt(c) * BigInt(product.denominator),
        );
      }),
    );
  });

  test("multiplies large parts that cancel", () => {
    const large = rational(9_007_199_254_740_881);
    expect(multiplyRational(large, rational(1, 9_007_199_254_740_881))).toEqual(rational(1));
  });

  test("throws rather than lose a digit", () => {
    const large = rational(Number.MAX_SAFE_INTEGER);
    expect(() => addRational(large, rational(1))).toThrow(RangeError);
    expect(() => multiplyRational(large, rational(2))).toThrow(RangeError);
  });

  test("gives the double of a decimal fraction that the decimal itself gives", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e12 }),
        fc.integer({ min: 0, max: 9 }),
        (n, places) => {
          const digits = String(n).padStart(places + 1, "0");
          const split = digits.length - places;
          const decimal = Number(`${digits.slice(0, split)}.${digits.slice(split)}`);
          expect(nearestNumber(rational(n, 10 ** places))).toBe(decimal);
        },
      ),
    );
  });
});
