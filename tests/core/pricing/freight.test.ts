import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { cents, pounds, tenThousandths } from "../../../src/core/base/units";
import { usDollar } from "../../../src/core/money/currency";
import {
  breakEvenWeight,
  freightCharge,
  freightCost,
  type FreightBreak,
  type FreightTable,
} from "../../../src/core/pricing/freight";

/** `"0@20 500@15"` reads: from 0 lb $20 a hundredweight, from 500 lb $15. */
function tableOf(text: string, least = 0): FreightTable {
  const [first, ...others] = text.split(" ").map((part): FreightBreak => {
    const [from = NaN, rate = NaN] = part.split("@").map(Number);
    return { from: pounds(from), rate: tenThousandths(rate * 1e4) };
  });
  if (first === undefined) throw new Error("A table needs a break.");
  return { name: text, breaks: [first, ...others], least: cents(least), basis: "invented" };
}

describe("the charge for a shipment", () => {
  const table = tableOf("0@20 500@15 1000@14", 6500);
  test.each([
    // pounds, billed, cents, least charge?
    ["nothing", 0, 0, 0, false],
    ["a little: the least charge", 10, 10, 6500, true],
    ["just at the least charge", 325, 325, 6500, false],
    ["below the break-even weight", 370, 370, 7400, false],
    ["at the break-even weight, where a tie keeps its own weight", 375, 375, 7500, false],
    ["above it, as the next break", 376, 500, 7500, false],
    ["a part of a pound counts as one", 399.2, 500, 7500, false],
    ["at a break", 500, 500, 7500, false],
    ["just below the last break", 960, 1000, 14_000, false],
    ["above all breaks", 2000, 2000, 28_000, false],
  ])("%s", (_what, weight, billed, charge, isLeast) => {
    expect(freightCharge(pounds(weight), table)).toMatchObject({ billed, charge, isLeast });
  });

  test("reads the breaks in any order", () => {
    const turned = tableOf("1000@14 0@20 500@15", 6500);
    expect(freightCharge(pounds(376), turned)).toEqual(freightCharge(pounds(376), table));
  });

  test("may skip a break", () => {
    expect(freightCharge(pounds(450), tableOf("0@100 500@99 600@50"))).toMatchObject({
      billed: 600,
      charge: 30_000,
    });
  });

  test("does not count a hair that doubles left above a whole pound", () => {
    const thirds = [0.1, 0.2, 375 - 0.3].reduce((sum, part) => sum + part, 0);
    expect(freightCharge(pounds(thirds), table).weight).toBe(375);
  });

  test("is never more than at its own rate, and never for less than it weighs", () => {
    const breaks = fc
      .array(fc.tuple(fc.integer({ min: 1, max: 20_000 }), fc.integer({ min: 1, max: 90 })), {
        minLength: 1,
        maxLength: 6,
      })
      .map((pairs) => ["0@100", ...pairs.map(([from, rate]) => `${from}@${rate}`)].join(" "));
    fc.assert(
      fc.property(breaks, fc.integer({ min: 1, max: 20_000 }), (text, weight) => {
        const table = tableOf(text, 5000);
        const charge = freightCharge(pounds(weight), table);
        expect(charge.saved).toBeGreaterThanOrEqual(0);
        expect(charge.charge).toBeGreaterThanOrEqual(5000);
        expect(charge.billed).toBeGreaterThanOrEqual(weight);
      }),
    );
  });
});

test("the break-even weight is the next break's charge over this one's rate", () => {
  const table = tableOf("0@20 500@15");
  expect([breakEvenWeight(table, 0), breakEvenWeight(table, 1)]).toEqual([375, null]);
});

describe("freight in the roll-up", () => {
  const table = tableOf("0@20 500@15", 6500);
  test("is billed hundredweights at the rate, so that the sheet can work it out", () => {
    expect(freightCost("Truck", freightCharge(pounds(400), table))).toEqual({
      name: "Truck",
      how: "400 lb charged as 500 lb",
      kind: "times",
      quantity: 5,
      unit: "hundredweight",
      each: 150_000,
    });
  });

  test("costs the same where kilograms are shown, and says both", () => {
    const charge = freightCharge(pounds(1787), tableOf("0@20 2000@15"), usDollar, "metric");
    expect(charge).toMatchObject({ weight: 1787, billed: 2000, charge: 30_000 });
    // 1 lb = 0.45359237 kg exactly: international yard and pound agreement of 1959.
    const words = "1,787 lb (810.6 kg) charged as 2,000 lb (907.2 kg)";
    expect(charge.because).toBe(`${words} at $15.00 per hundredweight = $300.00`);
    expect(freightCost("Truck", charge, "metric")).toMatchObject({ quantity: 20, how: words });
  });

  test("is the least charge where that stands", () => {
    expect(freightCost("Truck", freightCharge(pounds(10), table))).toEqual({
      name: "Truck",
      how: "the least charge, for 10 lb",
      kind: "typed",
      amount: 6500,
    });
  });
});
