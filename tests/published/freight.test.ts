/** Freight by weight breaks against worked examples. */
import { describe, expect, test } from "@jest/globals";
import { cents, pounds, tenThousandths } from "../../src/core/base/units";
import { breakEvenWeight, freightCharge, type FreightTable } from "../../src/core/pricing/freight";

describe("a shipment of 450 lb where the rate falls at 500 lb", () => {
  // help.insiteship.com, "Calculate Rated LTL Shipment": 14.38 per 100 lb up to 499 lb, 10.29 from
  // 500 lb: 64.71 at its own rate, 51.45 as 500 lb, and cheaper as 500 lb from 357.78 lb on.
  const table: FreightTable = {
    name: "two breaks",
    breaks: [
      { from: pounds(1), rate: tenThousandths(143_800) },
      { from: pounds(500), rate: tenThousandths(102_900) },
    ],
    least: cents(0),
    basis: "worked example",
  };

  test("is charged as 500 lb", () => {
    expect(freightCharge(pounds(450), table)).toMatchObject({
      billed: 500,
      charge: 5145,
      saved: 6471 - 5145,
      isLeast: false,
      because: "450 lb charged as 500 lb at $10.29 per hundredweight = $51.45",
    });
  });

  test("breaks even at 357.8 lb", () => {
    // The page divides rounded figures and says 357.78.
    expect(breakEvenWeight(table, 0)).toBeCloseTo(357.79, 2);
    expect(freightCharge(pounds(357), table)).toMatchObject({ billed: 357, charge: 5134 });
    expect(freightCharge(pounds(358), table)).toMatchObject({ billed: 500, charge: 5145 });
  });
});

describe("six tiers", () => {
  // creativelogistics.com, glossary, "Deficit Rating": charges within the tiers.
  const table: FreightTable = {
    name: "six tiers",
    breaks: [
      { from: pounds(0), rate: tenThousandths(1_000_000) },
      { from: pounds(500), rate: tenThousandths(900_000) },
      { from: pounds(1000), rate: tenThousandths(800_000) },
      { from: pounds(2000), rate: tenThousandths(750_000) },
      { from: pounds(5000), rate: tenThousandths(700_000) },
      { from: pounds(10_000), rate: tenThousandths(650_000) },
    ],
    least: cents(0),
    basis: "worked example",
  };

  test.each([
    [250, 25_000],
    [650, 58_500],
    [1500, 120_000],
    [2500, 187_500],
    [7500, 525_000],
    [15_000, 975_000],
  ])("%d lb costs %d cents at its own tier", (weight, charge) => {
    expect(freightCharge(pounds(weight), table)).toMatchObject({ billed: weight, charge });
  });

  test("490 lb is cheaper as 500 lb of the next tier: $450 instead of $490", () => {
    // The page takes the next tier's rate on the actual weight ($441); carriers bill the break's weight.
    expect(freightCharge(pounds(490), table)).toMatchObject({
      billed: 500,
      charge: 45_000,
      saved: 4000,
    });
  });
});
