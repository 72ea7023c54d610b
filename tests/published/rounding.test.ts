import { describe, expect, test } from "@jest/globals";
import { roundedProduct } from "../../src/core/base/exact";
import { decimalOfNumber } from "../../src/core/base/decimal";
import { cents } from "../../src/core/base/units";
import { percentOf } from "../../src/core/money/amounts";
import { currencies } from "../../src/core/money/currency";

/** Source: the examples on Microsoft's help page for the ROUND worksheet function (value from memory). */
describe("ROUND of a spreadsheet", () => {
  test.each([
    // value, digits, result
    [2.15, 1, 2.2],
    [2.149, 1, 2.1],
    [-1.475, 2, -1.48],
  ])("of %d to %d places is what money rounds to: %d", (value, digits, expected) => {
    const exact = decimalOfNumber(value, 6);
    if (exact === null) throw new Error("not read");
    const scaled = roundedProduct(exact.coefficient, 10 ** digits, 10 ** exact.places);
    expect(scaled / 10 ** digits).toBe(expected);
    // The same by way of a percentage of a round amount.
    expect(percentOf(cents(100 * 10 ** digits), value)).toBe(expected * 10 ** digits);
  });
});

/** Source: ISO 4217, list one, minor units (value from memory). */
describe("ISO 4217", () => {
  const minorUnits = { USD: 2, CAD: 2, MXN: 2, EUR: 2, GBP: 2, AUD: 2, NZD: 2 };

  test("gives the decimals of every currency that can be chosen", () => {
    expect(Object.fromEntries(currencies.map(({ code, digits }) => [code, digits]))).toEqual(
      minorUnits,
    );
  });
});
