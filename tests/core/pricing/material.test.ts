import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import Big from "big.js";
import type { CellValue } from "../../../src/core/base/cell";
import { inches, pieces } from "../../../src/core/base/units";
import { asCounted } from "../../../src/core/corrections/correctedLine";
import { usDollar } from "../../../src/core/money/currency";
import { checkItems, itemColumns, type ItemRow } from "../../../src/core/pricing/item";
import { readItemUnit, severalOf, unitsPerPiece } from "../../../src/core/pricing/itemUnit";
import { materialDoubts, priceMaterial, sparesFor } from "../../../src/core/pricing/material";
import type { Line } from "../../../src/core/takeoff/takeOff";

/** `"HN 1/4|Hex nut|Fasteners|each|0.04|0.007|5|2"` as a row of an items table. */
function itemRow(written: string): ItemRow {
  const texts = written.split("|");
  const cell = (value: CellValue, column: number) => ({
    value,
    place: { sheet: "Items", row: 1, column },
  });
  const [code = "", ...rest] = texts;
  return {
    ...Object.fromEntries(
      itemColumns
        .slice(1, texts.length)
        .map((key, index) => [key, cell(rest[index] ?? null, index + 1)]),
    ),
    code: cell(code, 0),
  };
}

const line = (item: string, quantity: number, ...size: number[]): Line => ({
  item,
  size: size.map(inches),
  quantity: pieces(quantity),
  counts: [],
});

const price = (lines: readonly Line[], ...rows: string[]) =>
  priceMaterial(lines.map(asCounted), checkItems(rows.map(itemRow), usDollar).items);

describe("a line", () => {
  test("costs what is to order, spares included, rounded once", () => {
    const [priced] = price(
      [line("HN 1/4", 19)],
      "HN 1/4|Hex nut|Fasteners|each|0.045|0.007|5|2",
    ).lines;
    // 19 and 2 spares: 21 x 0.045 = 0.945, and half a cent goes up.
    expect([priced?.spares, priced?.toOrder, priced?.cost]).toEqual([2, 21, 95]);
  });

  test.each<readonly [string, readonly number[], number | null]>([
    ["each", [], 1],
    ["foot", [96], 8],
    ["ft", [101], 8.4167],
    ["sq. ft", [48, 84], 28],
    ["metre", [1000 / 25.4], 1],
    ["m2", [1000 / 25.4, 1000 / 25.4], 1],
    ["foot", [], null],
    ["square foot", [48], null],
    ["pair", [], 1],
  ])("by the %s of size %j is %d units", (unit, size, units) => {
    expect(unitsPerPiece(readItemUnit(unit), size.map(inches))).toBe(units);
  });

  test("costs the exact product whatever the numbers", () => {
    fc.assert(
      fc.property(fc.nat(100_000), fc.nat(99_999_999), (quantity, tenThousandths) => {
        const cost = (tenThousandths / 10_000).toFixed(4);
        const [priced] = price([line("A", quantity)], `A|||each|${cost}`).lines;
        const exact = new Big(quantity).times(cost).round(2, Big.roundHalfUp);
        expect(priced?.cost).toBe(Number(exact.times(100)));
      }),
      { numRuns: 300 },
    );
  });
});

describe("spares", () => {
  test.each([
    [0, 5, 2, 0],
    [1, 5, 2, 2],
    [100, 5, 2, 5],
    [101, 5, 2, 6],
    [140, 5, 0, 7],
    [7, 0, 0, 0],
  ])("of %d at %d percent and at least %d are %d", (quantity, percent, least, spares) => {
    expect(sparesFor(pieces(quantity), { percent, least: pieces(least) })).toBe(spares);
  });
});

describe("what cannot be priced is named and never zero in silence", () => {
  const material = price(
    [line("A", 1), line("B", 2), line("C", 3), line("D", 4)],
    "A|||each|1.25",
    "B|||each|",
    "C|||foot|2",
  );

  test("the total is of what could be priced", () => {
    expect([material.total, material.unpriced]).toEqual([125, ["B", "C", "D"]]);
  });

  test("each has its reason", () => {
    expect(materialDoubts([material]).map(({ code, found }) => [code, found])).toEqual([
      ["item-unpriced", "B"],
      ["item-without-size", "C"],
      ["item-unknown", "D"],
    ]);
  });

  test("with nothing priced there is no total", () => {
    expect(price([line("A", 1)]).total).toBeNull();
  });
});

describe("an items table", () => {
  test.each([
    ["sf", "square feet"],
    ["foot", "feet"],
    ["m", "metres"],
    ["set", "set"],
    ["each", "each"],
  ])("more than one %s is called %s", (unit, several) => {
    expect(severalOf(readItemUnit(unit))).toBe(several);
  });

  test("reports bad cells with their places and keeps the rest of the row", () => {
    const { items, findings } = checkItems(
      [itemRow("A|d|f|each|cheap|heavy|some|-1"), itemRow("a|again"), itemRow("|no code")],
      usDollar,
    );
    expect(findings.map(({ code }) => code)).toEqual([
      "weight-not-a-number",
      "price-not-understood",
      "spares-not-a-number",
      "spares-not-a-number",
      "item-twice",
      "item-without-code",
    ]);
    expect(items.get("a")).toMatchObject({ description: "d", unitCost: null, weight: null });
  });

  test("family totals add up to the total", () => {
    const material = price(
      [line("A", 3), line("B", 7), line("C", 1)],
      "A||Bolts|each|1.01",
      "B||Nuts|each|0.33",
      "C||Bolts|each|2",
    );
    const sum = material.families.reduce((total, { cost }) => total + cost, 0);
    expect([material.families.map(({ family }) => family), sum]).toEqual([
      ["Bolts", "Nuts"],
      material.total,
    ]);
  });
});
