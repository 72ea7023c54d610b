import Big from "big.js";
import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { cents, tenThousandths } from "../../../src/core/base/units";
import {
  canExtend,
  extend,
  largestAmount,
  percentOf,
  sumOf,
} from "../../../src/core/money/amounts";
import { usDollar } from "../../../src/core/money/currency";

// big.js is the oracle; its mode 1 rounds halves away from zero.
const halfAwayFromZero = 1;
const toCents = (amount: Big, digits = 2): number =>
  Number(amount.round(digits, halfAwayFromZero).times(10 ** digits)) || 0;

const cost = fc.integer({ min: 0, max: 1e10 });
const quantity = fc
  .tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 6 }))
  .map(([n, places]) => n / 10 ** places);

describe("extend", () => {
  test.each([
    // quantity, unit cost in ten-thousandths, cents
    [3, 825, 25],
    [2, 25, 1],
    [1, 49, 0],
    [1, 50, 1],
    [-1, 50, -1],
    [-1, 49, 0],
    [0, 12_345, 0],
    [1.005, 10_000, 101],
    [8.166667, 35_500, 2899],
    [1e6, 9_999_999, 99_999_990_000],
  ])("%d at %d/10,000 is %d cents", (count, unitCost, expected) => {
    expect(extend(count, tenThousandths(unitCost))).toBe(expected);
  });

  test("agrees with the oracle on every quantity to six decimals", () => {
    fc.assert(
      fc.property(quantity, cost, (count, n) => {
        const unitCost = tenThousandths(n);
        fc.pre(canExtend(count, unitCost));
        expect(extend(count, unitCost)).toBe(toCents(new Big(count).times(n).div(10_000)));
      }),
      { numRuns: 2000 },
    );
  });

  test("agrees with the oracle on products that no double holds", () => {
    const large = fc.integer({ min: 1, max: 999_999_999 });
    fc.assert(
      fc.property(large, fc.nat(999_999), fc.integer({ min: 1, max: 1e7 }), (whole, part, n) => {
        const count = Number(`${whole}.${String(part).padStart(6, "0")}`);
        const unitCost = tenThousandths(n);
        fc.pre(canExtend(count, unitCost));
        expect(extend(count, unitCost)).toBe(toCents(new Big(count).times(n).div(10_000)));
      }),
    );
  });

  test.each([0, 3, 4])("rounds to a currency of %d decimals", (digits) => {
    const money = { ...usDollar, digits };
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), fc.nat(10_000_000), (count, n) => {
        expect(extend(count, tenThousandths(n), money)).toBe(
          toCents(new Big(count).times(n).div(10_000), digits),
        );
      }),
    );
  });

  test("refuses what would be no exact amount, and says so before", () => {
    const dear = tenThousandths(9_999_999_999_999);
    expect(canExtend(1, dear)).toBe(true);
    for (const count of [1e9, -1e9, 100, NaN, Infinity]) {
      expect(canExtend(count, dear)).toBe(false);
      expect(() => extend(count, dear)).toThrow(RangeError);
    }
  });

  test("never throws where it may be asked", () => {
    fc.assert(
      fc.property(fc.double(), fc.integer({ min: 0, max: 1e13 }), (count, n) => {
        const unitCost = tenThousandths(n);
        if (canExtend(count, unitCost)) {
          expect(Math.abs(extend(count, unitCost))).toBeLessThanOrEqual(largestAmount);
        }
      }),
    );
  });
});

describe("percentOf", () => {
  test.each([
    [10_000, 12.5, 1250],
    [1, 50, 1],
    [-1, 50, -1],
    [333, 0, 0],
    [9_007_199_254_740_991, 100, 9_007_199_254_740_991],
    [100_000, 8.875, 8875],
  ])("%d cents by %d %% is %d", (amount, percent, expected) => {
    expect(percentOf(cents(amount), percent)).toBe(expected);
  });

  test("agrees with the oracle", () => {
    const percent = fc.integer({ min: -1e8, max: 1e9 }).map((n) => n / 1e6);
    fc.assert(
      fc.property(fc.integer({ min: -1e13, max: 1e13 }), percent, (amount, rate) => {
        const expected = toCents(new Big(amount).times(rate).div(10_000));
        fc.pre(Number.isSafeInteger(expected));
        expect(percentOf(cents(amount), rate)).toBe(expected);
      }),
    );
  });

  test.each([NaN, Infinity, 1e12])("throws on %d percent", (percent) => {
    expect(() => percentOf(cents(1), percent)).toThrow(RangeError);
  });
});

describe("sumOf", () => {
  const most = Number.MAX_SAFE_INTEGER;

  test("of nothing is zero", () => {
    expect(sumOf([])).toBe(0);
  });

  test("does not depend on the order", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -1e12, max: 1e12 })), (amounts) => {
        const sum = sumOf(amounts.map(cents));
        expect(sum).toBe(Number(amounts.reduce((all, each) => all + BigInt(each), 0n)));
        expect(sumOf(amounts.map(cents).reverse())).toBe(sum);
      }),
    );
  });

  test("may pass beyond what a double holds on the way, and not at the end", () => {
    expect(sumOf([most, most, -most].map(cents))).toBe(most);
    expect(sumOf([most, 2, -3].map(cents))).toBe(most - 1);
    expect(() => sumOf([most, 1].map(cents))).toThrow(RangeError);
  });
});
