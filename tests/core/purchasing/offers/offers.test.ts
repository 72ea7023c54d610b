import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { isBlank, type CellValue, type TypedCell } from "../../../../src/core/base/cell";
import { usDollar } from "../../../../src/core/money/currency";
import {
  checkOffers,
  offerColumns,
  type OfferColumn,
  type OfferRow,
} from "../../../../src/core/purchasing/offers/offers";

const rules = { currency: usDollar, unit: "in", today: 46_300, staleAfterDays: 90 } as const;

/** A row as typed, in the columns' own order from column A. */
const rowOf = (cells: Partial<Record<OfferColumn, CellValue>>, row = 1): OfferRow => {
  const typed = (column: OfferColumn): TypedCell => ({
    value: cells[column] ?? null,
    place: { sheet: "Offers", row, column: offerColumns.indexOf(column) },
  });
  return {
    ...Object.fromEntries(offerColumns.map((column) => [column, typed(column)])),
    item: typed("item"),
  };
};
const good = {
  item: "HN 1/4",
  supplier: "Alder",
  packSize: 100,
  price: "$12.50",
  leadDays: 5,
} as const;

describe("an offer", () => {
  test("is read from what people type", () => {
    const { offers, findings } = checkOffers(
      [
        rowOf({
          ...good,
          packSize: "1,000",
          fromPacks: 5,
          leastPacks: " 2 ",
          priceDate: "2026-09-01",
        }),
      ],
      rules,
    );
    expect(findings).toEqual([]);
    expect(offers).toMatchObject([
      {
        item: "HN 1/4",
        size: [],
        supplier: "Alder",
        packSize: 1000,
        price: 1250,
        fromPacks: 5,
        leastPacks: 2,
        leadDays: 5,
        priceDate: 46_266,
      },
    ]);
  });

  test.each<[CellValue, readonly number[]]>([
    [240, [240]],
    [`20'-0"`, [240]],
    ["48 x 84", [48, 84]],
    [`4'-0" × 7'-0"`, [48, 84]],
    ["6096 mm", [240]],
    [null, []],
  ])("of size %p has the size in inches", (size, expected) => {
    expect(checkOffers([rowOf({ ...good, size })], rules).offers[0]?.size).toEqual(expected);
  });

  test("is one piece, from one pack, of one pack at least, where the cells are blank", () => {
    const { offers } = checkOffers([rowOf({ ...good, packSize: null })], rules);
    expect(offers).toMatchObject([{ packSize: 1, fromPacks: 1, leastPacks: 1 }]);
  });

  test("has its supplier spelt as in the first row", () => {
    const { offers } = checkOffers([rowOf(good), rowOf({ ...good, supplier: "ALDER " }, 2)], rules);
    expect(offers.map(({ supplier }) => supplier)).toEqual(["Alder", "Alder"]);
  });
});

describe("a cell that is wrong", () => {
  test.each<[Partial<Record<OfferColumn, CellValue>>, string, string, number]>([
    [{ item: " " }, "offer-without-item", "A2", 0],
    [{ supplier: null }, "offer-without-supplier", "C2", 0],
    [{ packSize: "a box" }, "pack-size-not-whole", "D2", 0],
    [{ packSize: 0 }, "pack-size-not-whole", "D2", 0],
    [{ price: null }, "offer-without-price", "E2", 0],
    [{ price: 12.345 }, "pack-price-rounded", "E2", 1],
    [{ fromPacks: 2.5 }, "count-not-whole", "F2", 0],
    [{ leastPacks: -1 }, "count-not-whole", "G2", 0],
    [{ leadDays: "soon" }, "lead-not-days", "H2", 1],
    [{ leadDays: null }, "lead-unknown", "H2", 1],
    [{ priceDate: "spring" }, "offer-date-not-a-date", "I2", 1],
    [{ priceDate: "2026-01-05" }, "price-old", "I2", 1],
  ])("%p is the finding %s at %s", (cells, code, cell, left) => {
    const { offers, findings } = checkOffers([rowOf({ ...good, ...cells })], rules);
    expect(findings.map((finding) => finding.code)).toContain(code);
    const found = findings.find((finding) => finding.code === code)?.place;
    expect(`${String.fromCharCode(65 + (found?.column ?? 25))}${(found?.row ?? 0) + 1}`).toBe(cell);
    expect(offers).toHaveLength(left);
  });

  test("a size that is none leaves the offer out, with the length's own finding", () => {
    const { offers, findings } = checkOffers([rowOf({ ...good, size: "long" })], rules);
    expect(offers).toEqual([]);
    expect(findings.map(({ level }) => level)).toEqual(["warn"]);
  });

  test("a price that does not fall with the count is reported", () => {
    const { findings } = checkOffers(
      [rowOf(good), rowOf({ ...good, fromPacks: 10, price: 13 }, 2)],
      rules,
    );
    expect(findings).toMatchObject([{ code: "price-rises", found: "10" }]);
  });

  test("whatever is in the cells, each row is an offer or has a finding", () => {
    const anyCell = fc.oneof(
      fc.constant(null),
      fc.string(),
      fc.double(),
      fc.boolean(),
      fc.constantFrom("12", "=1+1", "7-0", "1e999", "x", "48 x"),
      fc.double().map((serial) => ({ kind: "date" as const, serial })),
      fc.constant({ kind: "error" as const, error: "#N/A" }),
    );
    const anyRow = fc.record(
      Object.fromEntries(offerColumns.map((column) => [column, anyCell])),
    ) as fc.Arbitrary<Partial<Record<OfferColumn, CellValue>>>;
    fc.assert(
      fc.property(anyRow, (cells) => {
        const isBlankRow = offerColumns.every((column) => isBlank(cells[column] ?? null));
        const { offers, findings } = checkOffers([rowOf(cells)], rules);
        expect(isBlankRow || offers.length + findings.length > 0).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });
});
