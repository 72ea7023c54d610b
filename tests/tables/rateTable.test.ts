import { describe, expect, test } from "@jest/globals";
import type { Block, CellValue } from "../../src/core/base/cell";
import type { RateRow } from "../../src/core/pricing/rates/rateRow";
import { rateRows, type RateKey } from "../../src/core/pricing/rates/rateRows";
import { usDollar } from "../../src/core/money/currency";
import { rateReader } from "../../src/core/pricing/rates/rates";
import { ratesSheet } from "../../src/sheets/owner/ratesSheet";
import { rateHeadings, readRateTable } from "../../src/tables/rateTable";
import { shownValue } from "../../src/workbook/drawing";

const blockOf = (...rows: readonly (readonly CellValue[])[]): Block => ({
  sheet: "Rates",
  row: 4,
  column: 1,
  rows,
});

describe("a rates sheet", () => {
  const read = readRateTable(
    blockOf(
      ["Every value is invented."],
      [...rateHeadings, "North", " South "],
      ["Wages"],
      ["Lead installer, wage", "per hour", "", 50, null, 55],
      ["  site TAKES ", "", "", 1],
      ["Labor burden", "", "", "30 %"],
      ["This site takes", "", "", 1.5, 2],
      [],
    ),
  );

  test("gives each rate its cell, for the usual and for each job that has a column", () => {
    expect(read?.rates.usual.leadRate).toEqual({
      value: 50,
      place: { sheet: "Rates", row: 7, column: 4 },
    });
    expect(read?.rates.usual.site?.value).toBe(1.5);
    expect([...(read?.rates.byJob.keys() ?? [])]).toEqual(["north", "south"]);
    expect(read?.rates.byJob.get("south")?.leadRate?.value).toBe(55);
    expect(read?.rates.byJob.get("north")?.site?.value).toBe(2);
  });

  test("gives each rate the cell of its unit", () => {
    expect(read?.rates.units?.leadRate).toEqual({
      value: "per hour",
      place: { sheet: "Rates", row: 7, column: 2 },
    });
    expect(readRateTable(blockOf(["Rate", "Usual"], ["Travel", 30]))?.rates.units).toEqual({});
  });

  test("says which rows it does not know, and guesses", () => {
    expect(read?.findings.map(({ found, place }) => [found, place?.row])).toEqual([
      ["site TAKES", 8],
      ["Labor burden", 9],
    ]);
    expect(read?.findings[1]?.message).toContain("Did you mean Labour burden?");
  });

  test("passes over a heading that stands alone in its row", () => {
    expect(read?.findings.some(({ found }) => found === "Wages")).toBe(false);
  });
});

test.each<readonly [string, Block]>([
  ["nothing", blockOf()],
  ["an items table", blockOf(["Code", "Unit cost"], ["JAMB", 12])],
  ["a heading without a usual value", blockOf(["Rate", "Unit"], ["Working day", 8])],
])("%s is no rates sheet", (_what, block) => {
  expect(readRateTable(block)).toBeNull();
});

test("the starter's sheet is read back as it was drawn, every row of it", () => {
  const drawing = ratesSheet("Rates", ["North"]);
  const rows = drawing.rows.map(({ cells }) =>
    cells.map((cell) => (cell === null ? null : shownValue(cell))),
  );
  const read = readRateTable({ sheet: "Rates", row: 0, column: 0, rows });
  expect(read?.findings).toEqual([]);
  expect(rateRows.map(({ key }) => read?.rates.usual[key]?.value ?? "")).toEqual(
    rateRows.map(({ starter }) => starter),
  );
  const reader = rateReader(read?.rates ?? { usual: {}, byJob: new Map() }, "North", usDollar);
  for (const { key, kind } of rateRows) if (kind === "number") reader.number(key);
  reader.rate("freight0");
  expect(reader.findings.filter(({ found }) => found !== "24 %")).toEqual([]);
  expect(rateRows.every(({ key }) => read?.rates.byJob.get("north")?.[key]?.value === null)).toBe(
    true,
  );
});

test("the starter's sheet in metric units is read as the starter is", () => {
  const drawing = ratesSheet("Rates", [], "metric");
  const rows = drawing.rows.map(({ cells }) =>
    cells.map((cell) => (cell === null ? null : shownValue(cell))),
  );
  const units = rows.map(([, unit]) => unit);
  expect(units).toEqual(expect.arrayContaining(["kg", "N·m", "kg per m", "mm", "cm^4"]));
  const read = readRateTable({ sheet: "Rates", row: 0, column: 0, rows });
  const reader = rateReader(read?.rates ?? { usual: {}, byJob: new Map() }, "North", usDollar);
  // To a hundredth of a kilogram.
  expect(reader.number("palletCarries")).toBeCloseTo(1500, 1);
  expect(reader.number("palletWeight")).toBeCloseTo(45, 1);
  for (const { key, measure } of rateRows as readonly RateRow[]) {
    if (measure !== undefined) reader.number(key as RateKey);
  }
  expect([reader.findings, reader.invented]).toEqual([[], []]);
});
