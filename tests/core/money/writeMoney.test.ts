import Big from "big.js";
import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { cents, tenThousandths } from "../../../src/core/base/units";
import { currencies, currencyOf, usDollar, type Currency } from "../../../src/core/money/currency";
import {
  decimalText,
  majorUnits,
  moneyText,
  unitCostDecimal,
  unitCostNumber,
  unitCostText,
} from "../../../src/core/money/writeMoney";

const euro = currencyOf("eur") ?? usDollar;
const withDigits = (digits: number): Currency => ({ ...usDollar, digits });

describe("amounts as text", () => {
  test.each([
    [123_450, "$1,234.50", "€1.234,50", "1234.50"],
    [0, "$0.00", "€0,00", "0.00"],
    [5, "$0.05", "€0,05", "0.05"],
    [-5, "-$0.05", "-€0,05", "-0.05"],
    [-123_456_789, "-$1,234,567.89", "-€1.234.567,89", "-1234567.89"],
    [99_999, "$999.99", "€999,99", "999.99"],
    [100_000, "$1,000.00", "€1.000,00", "1000.00"],
    [
      Number.MAX_SAFE_INTEGER,
      "$90,071,992,547,409.91",
      "€90.071.992.547.409,91",
      "90071992547409.91",
    ],
  ])("%d cents are %s, %s and %s", (amount, dollars, euros, decimal) => {
    expect(moneyText(cents(amount))).toBe(dollars);
    expect(moneyText(cents(amount), euro)).toBe(euros);
    expect(decimalText(cents(amount))).toBe(decimal);
  });

  test.each([
    [0, "$1,234,567", "1234567"],
    [3, "$1,234.567", "1234.567"],
    [4, "$123.4567", "123.4567"],
  ])("have the %d decimals of their currency", (digits, text, decimal) => {
    expect(moneyText(cents(1_234_567), withDigits(digits))).toBe(text);
    expect(decimalText(cents(1_234_567), withDigits(digits))).toBe(decimal);
  });

  test("agree with the oracle as decimals", () => {
    fc.assert(
      fc.property(fc.maxSafeInteger(), fc.integer({ min: 0, max: 4 }), (amount, digits) => {
        const expected = new Big(amount).div(10 ** digits).toFixed(digits);
        expect(decimalText(cents(amount), withDigits(digits))).toBe(expected);
      }),
    );
  });
});

describe("unit costs as text", () => {
  test.each([
    [825, "$0.0825", "0.0825"],
    [12_345_000, "$1,234.50", "1234.50"],
    [12_345_600, "$1,234.56", "1234.56"],
    [1250, "$0.125", "0.125"],
    [1, "$0.0001", "0.0001"],
    [0, "$0.00", "0.00"],
    [100_000, "$10.00", "10.00"],
  ])("%d/10,000 are %s and %s", (cost, text, decimal) => {
    expect(unitCostText(tenThousandths(cost))).toBe(text);
    expect(unitCostDecimal(tenThousandths(cost))).toBe(decimal);
  });

  test("have no decimals they do not need in a currency without any", () => {
    expect(unitCostDecimal(tenThousandths(120_000), withDigits(0))).toBe("12");
    expect(unitCostDecimal(tenThousandths(125_000), withDigits(0))).toBe("12.5");
    expect(unitCostDecimal(tenThousandths(0), withDigits(0))).toBe("0");
  });
});

describe("money as the numbers of a sheet", () => {
  test("is the double nearest to it", () => {
    expect(majorUnits(cents(123_450))).toBe(1234.5);
    expect(majorUnits(cents(10))).toBe(0.1);
    expect(unitCostNumber(tenThousandths(825))).toBe(0.0825);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e12 }), (amount) => {
        expect(majorUnits(cents(amount))).toBe(Number(decimalText(cents(amount))));
      }),
    );
  });
});

describe("currencies", () => {
  test("are found by their code, in either case", () => {
    expect(currencyOf(" usd ")).toBe(usDollar);
    expect(currencyOf("")).toBeNull();
    expect(currencyOf("XXX")).toBeNull();
  });

  test("have codes of their own", () => {
    expect(new Set(currencies.map(({ code }) => code)).size).toBe(currencies.length);
  });
});
