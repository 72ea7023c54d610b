import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import type { CellValue } from "../../../src/core/base/cell";
import { tenThousandths } from "../../../src/core/base/units";
import { currencyOf, usDollar, type Currency } from "../../../src/core/money/currency";
import { moneyFindings, priceFinding } from "../../../src/core/money/moneyFindings";
import { readPrice, type ReadPrice } from "../../../src/core/money/price";
import { unitCostDecimal, unitCostText } from "../../../src/core/money/writeMoney";

function currency(code: string): Currency {
  const found = currencyOf(code);
  if (found === null) throw new Error(`No currency ${code}`);
  return found;
}

function read(value: CellValue, code = "USD"): ReadPrice {
  const result = readPrice(value, currency(code));
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

describe("a typed price", () => {
  test.each<[CellValue, string]>([
    [12, "12.00"],
    [12.5, "12.50"],
    [0.0825, "0.0825"],
    [1.1, "1.10"],
    ["12", "12.00"],
    ["12.5", "12.50"],
    ["12.", "12.00"],
    [".0825", "0.0825"],
    ["0,125", "0.125"],
    ["1,234.50", "1234.50"],
    ["$1,234.50", "1234.50"],
    ["$ 12", "12.00"],
    ["12 $", "12.00"],
    ["USD 12.50", "12.50"],
    ["usd12.50", "12.50"],
    ["12.50 USD", "12.50"],
    ["US$12.50", "12.50"],
    ["USD $12.50", "12.50"],
    ["12.50 each", "12.50"],
    ["0.08/ea", "0.08"],
    ["$0.08 per piece", "0.08"],
    ["12 ea.", "12.00"],
    // The other way of writing numbers, where it can be nothing else.
    ["1.234,50", "1234.50"],
    ["1 234,50", "1234.50"],
    ["12,50", "12.50"],
    ["1.234.567,8", "1234567.80"],
    // One mark with three digits behind it: the currency's own way.
    ["1,234", "1234.00"],
    ["1.234", "1.234"],
    // Hard spaces and full-width digits.
    ["\u00A0$\u202F1\u00A0234.50 ", "1234.50"],
    ["１２.50", "12.50"],
    ["999,999,999.9999", "999999999.9999"],
  ])("%j is %s dollars, with no doubt", (value, expected) => {
    const { unitCost, doubts } = read(value);
    expect(unitCostDecimal(unitCost)).toBe(expected);
    expect(doubts).toEqual([]);
  });

  test.each<[CellValue, string, string]>([
    ["12,50 €", "EUR", "12.50"],
    ["€ 1.234,50", "EUR", "1234.50"],
    ["1,234.50", "EUR", "1234.50"],
    ["CA$5", "CAD", "5.00"],
    ["C$5", "CAD", "5.00"],
    ["$5", "CAD", "5.00"],
    ["£5.25", "GBP", "5.25"],
  ])("%j in %s is %s", (value, code, expected) => {
    expect(unitCostDecimal(read(value, code).unitCost)).toBe(expected);
    expect(read(value, code).doubts).toEqual([]);
  });

  test.each<[CellValue, string, string, string]>([
    [0, "USD", "0.00", "price-is-zero"],
    [-0, "USD", "0.00", "price-is-zero"],
    ["$0.00", "USD", "0.00", "price-is-zero"],
    [0.33333, "USD", "0.3333", "price-rounded"],
    ["0.00005", "USD", "0.0001", "price-rounded"],
    [0.00005, "USD", "0.0001", "price-rounded"],
    ["12.34567", "USD", "12.3457", "price-rounded"],
    [1e-9, "USD", "0.00", "price-rounded"],
    ["1,234", "EUR", "1.234", "price-mark-unsure"],
    ["1.234", "EUR", "1234.00", "price-mark-unsure"],
  ])("%j in %s is %s, with a doubt", (value, code, expected, doubt) => {
    const { unitCost, doubts } = read(value, code);
    expect(unitCostDecimal(unitCost)).toBe(expected);
    expect(doubts.map((each) => each.code)).toEqual([doubt]);
  });
});

describe("what is not a price", () => {
  test.each<[CellValue, string, number]>([
    [null, "price-blank", 0],
    ["", "price-blank", 0],
    ["  ", "price-blank", 0],
    [true, "price-not-text-or-number", 0],
    [NaN, "price-not-text-or-number", 0],
    [{ kind: "error", error: "#REF!" }, "price-is-an-error", 0],
    [{ kind: "date", serial: 46_209 }, "price-is-a-date", 0],
    ["1".repeat(101), "price-text-too-long", 100],
    ["TBD", "price-not-understood", 0],
    ["n/a", "price-not-understood", 0],
    ["$", "price-not-understood", 1],
    ["$$5", "price-not-understood", 1],
    ["12 per 100", "price-not-understood", 3],
    ["12/C", "price-not-understood", 2],
    ["12%", "price-not-understood", 2],
    ["12.50-", "price-not-understood", 5],
    ["1e3", "price-not-understood", 1],
    ["=12", "price-not-understood", 0],
    ["1,23,456.00", "price-not-understood", 4],
    ["12 eachway", "price-not-understood", 3],
    ["€12", "price-in-another-currency", 0],
    ["12 €", "price-in-another-currency", 3],
    ["EUR 12", "price-in-another-currency", 0],
    ["12 EUR", "price-in-another-currency", 3],
    ["CA$12", "price-in-another-currency", 0],
    ["USD €12", "price-in-another-currency", 0],
    ["12¢", "price-in-another-currency", 2],
    ["-5", "price-negative", 0],
    [" $-5", "price-negative", 1],
    ["−$5", "price-negative", 0],
    ["(5.00)", "price-negative", 0],
    [-5, "price-negative", 0],
    [1e9, "price-too-large", 0],
    [Infinity, "price-too-large", 0],
    ["1000000000", "price-too-large", 0],
    ["$1,000,000,000", "price-too-large", 1],
    ["9".repeat(60), "price-too-large", 0],
  ])("%j has the fault %s at %d", (value, code, position) => {
    expect(readPrice(value)).toMatchObject({ ok: false, error: { code, position } });
  });

  test("is said in words, and becomes a finding with its cell", () => {
    const result = readPrice("12 per 100");
    if (result.ok) throw new Error("read");
    const place = { sheet: "Items", row: 1, column: 4 };
    expect(priceFinding(result.error, { place, found: "12 per 100" })).toEqual({
      code: "price-not-understood",
      level: "warn",
      place,
      found: "12 per 100",
      message:
        "“12 per 100” stops making sense as a price at “per 100” (character 4). " +
        "Type only the number for one unit, such as 12.50.",
    });
  });

  test("never keeps a place unfilled in its words", () => {
    const cells = [
      null,
      "",
      true,
      "TBD",
      "€12",
      -5,
      1e9,
      0,
      0.33333,
      { kind: "error", error: "#N/A" },
    ];
    const made = new Set<string>();
    for (const cell of [...cells, { kind: "date", serial: 1 }, "9".repeat(200), "1.234"]) {
      for (const code of ["USD", "EUR"]) {
        const result = readPrice(cell as CellValue, currency(code));
        for (const said of result.ok ? result.value.doubts : [result.error]) {
          made.add(said.code);
          expect(said.message).not.toMatch(/\{\w+\}/);
        }
      }
    }
    // Whoever extends a cost makes the one finding that no cell makes.
    expect([...made, "amount-too-large"].sort()).toEqual(Object.keys(moneyFindings).sort());
  });
});

describe("laws of prices", () => {
  const cost = fc.integer({ min: 1, max: 9_999_999_999_999 }).map(tenThousandths);
  const anyCurrency = fc.constantFrom("USD", "CAD", "EUR", "GBP").map(currency);

  test("what is written reads back the same", () => {
    fc.assert(
      fc.property(cost, anyCurrency, (unitCost, each) => {
        const result = readPrice(unitCostText(unitCost, each), each);
        expect(result.ok && result.value.unitCost).toBe(unitCost);
      }),
    );
  });

  test("a number reads as its decimal text in dollars", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e12 }), (n) => {
        const result = readPrice(n / 10_000, usDollar);
        expect(result.ok && result.value.unitCost).toBe(n);
        const text = readPrice(unitCostDecimal(tenThousandths(n)), usDollar);
        expect(text.ok && text.value.unitCost).toBe(n);
      }),
    );
  });
});
