import { describe, expect, test } from "@jest/globals";
import type { Block, CellValue } from "../../src/core/base/cell";
import { usDollar } from "../../src/core/money/currency";
import { checkItems, type ItemRow } from "../../src/core/pricing/item";
import { itemsSheet } from "../../src/sheets/itemsSheet";
import { readItemTable } from "../../src/tables/itemTable";
import { shownValue, type Drawing } from "../../src/workbook/drawing";

const blockOf = ({ name, rows }: Drawing): Block => ({
  sheet: name,
  row: 0,
  column: 0,
  rows: rows.map(({ cells }) => cells.map((cell) => (cell === null ? null : shownValue(cell)))),
});

/** An items table of these weights, by the unit `unit`, below the heading `heading`. */
const tableOf = (heading: string, weights: readonly CellValue[], unit = "each"): Block => ({
  sheet: "Items",
  row: 0,
  column: 0,
  rows: [
    ["Code", "Unit", "Unit cost", heading],
    ...weights.map((weight, index) => [`A${index + 1}`, unit, 1, weight]),
  ],
});

const rowsOf = (block: Block): readonly ItemRow[] => readItemTable(block) ?? [];

const checked = (...of: Parameters<typeof tableOf>) => {
  const { items, findings } = checkItems(rowsOf(tableOf(...of)), usDollar);
  const weights = [...items.values()].map(({ weight }) =>
    weight === null ? null : Number(weight.toFixed(6)),
  );
  return { weights, findings };
};

// 1 lb = 0.45359237 kg exactly: international yard and pound agreement of 1959; NIST SP 811.
const pound = 0.45359237;

describe("the heading of the weights names their unit", () => {
  test.each([
    "Weight (kg)",
    "kg",
    "KG",
    "weight kg",
    "Weight, kg",
    "Weight [kg each]",
    "Wt. (kg)",
    "Unit weight (kg)",
    "Mass (kg)",
    "Weight each (kg)",
    "weight in kilograms",
  ])("%s", (heading) => {
    expect(checked(heading, [pound, "45.359237"])).toEqual({ weights: [1, 100], findings: [] });
  });

  test.each(["Weight", "Weight (lb)", "lbs", "wt", "Weight each", "Unit weight", "Weight (each)"])(
    "%s is pounds",
    (heading) => {
      expect(checked(heading, [0.35, "2.5 lb"])).toEqual({ weights: [0.35, 2.5], findings: [] });
    },
  );

  test("grams and ounces too", () => {
    expect(checked("Weight (g)", [453.59237]).weights).toEqual([1]);
    expect(checked("Weight (oz)", [8]).weights).toEqual([0.5]);
  });

  test("one that is not known is told once, at the heading, and only numbers with a unit are read", () => {
    const { weights, findings } = checked("Weight (stone)", [1, 2, "2.5 lb", "45.359237 kg"]);
    expect(weights).toEqual([null, null, 2.5, 100]);
    expect(findings.map(({ code, found, place }) => [code, found, place])).toEqual([
      ["weight-heading-not-known", "stone", { sheet: "Items", row: 0, column: 3 }],
      ["weights-in-other-units", "2.5 lb", { sheet: "Items", row: 3, column: 3 }],
    ]);
  });

  test.each(["Weight class", "Weighted", "Track", "N", "#", "g"])(
    "%s heads no weights",
    (heading) => {
      expect(checked(heading, [1]).weights).toEqual([null]);
    },
  );
});

describe("a weight with its own unit", () => {
  test("counts by it under a heading without a unit", () => {
    expect(checked("Weight", ["45.359237 kg", "2.5 lb", 3])).toEqual({
      weights: [100, 2.5, 3],
      findings: [],
    });
  });

  test("counts by it under a heading with another one, which is told once", () => {
    const { weights, findings } = checked("Weight (kg)", ["2.5 lb", "3 lb", pound]);
    expect(weights).toEqual([2.5, 3, 1]);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ code: "weights-in-other-units", level: "note" });
    expect(findings[0]?.message).toContain("2, such as 2.5 lb of A1");
  });

  test.each([
    ["3 tons", "tons"],
    ["3 stone", "stone"],
    ["30 N·m", "N·m"],
  ])("that is none, such as %s, is told and not taken for pounds", (typed, unit) => {
    const { weights, findings } = checked("Weight (lb)", [typed]);
    expect(weights).toEqual([null]);
    expect(findings[0]).toMatchObject({ code: "weight-unit-not-known", level: "warn" });
    expect(findings[0]?.message).toContain(`${unit} is no unit of weight`);
  });

  test("whose comma could be a decimal one is told", () => {
    const { weights, findings } = checked("Weight (kg)", ["1,250"]);
    expect(weights[0]).toBeCloseTo(1250 / pound, 5);
    expect(findings[0]?.message).toContain("1,250 kg (thousands)");
  });
});

describe("a weight by length or area is what one unit of the item weighs", () => {
  test.each([
    // 1 lb/ft = 1.488164 kg/m and 1 lb/sq ft = 4.882428 kg/m2: NIST SP 811, appendix B.8.
    ["Weight (kg/m)", 1.488164, "foot", 1],
    ["Weight (kg/m)", 1.488164, "metre", 1 / 0.3048],
    ["Weight", "1.488164 kg per metre", "foot", 1],
    ["Weight (kg per m²)", 4.882428, "square foot", 1],
    ["Weight (kg)", 1, "metre", 1 / pound],
    ["Weight (kg)", "2 lb/ft", "foot", 2],
  ])("%s of %s by the %s", (heading, typed, unit, expected) => {
    expect(checked(heading, [typed], unit).weights[0]).toBeCloseTo(expected, 4);
  });

  test("and told where the item goes by another one", () => {
    const { weights, findings } = checked("Weight (kg/m)", [2]);
    expect(weights).toEqual([null]);
    expect(findings[0]?.message).toContain("in kg per m, and the item goes by the piece");
  });
});

test("an items sheet that is written keeps the unit of its weights", () => {
  const rows = [
    ...rowsOf(tableOf("Weight (kg)", [1.2, "2.5 lb", "3,5"])),
    ...rowsOf(tableOf("Weight", [4])).map((row) => ({ ...row, code: { value: "B", place: null } })),
  ];
  const written = blockOf(itemsSheet("Items", rows, null));
  expect(written.rows[0]).toContain("Weight (kg)");
  const weights = (of: readonly ItemRow[]) =>
    [...checkItems(of, usDollar).items.values()].map(({ weight }) => weight);
  expect(weights(rowsOf(written))).toEqual(weights(rows));
});
