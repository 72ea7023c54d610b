/** Tables on a sheet that is replaced: the table stays the same one, so that formulas keep it. */
import type { DrawnTable } from "../../workbook/drawing";
import type { Area } from "./bands";
import { hasExcelApi } from "./inExcel";
import { addressOf } from "./runs";

/** A table that stands on the sheet. */
export type StandingTable = { readonly name: string; readonly area: Area };

export const tableArea = (table: DrawnTable): Area => ({
  row: table.headingRow,
  column: table.firstColumn,
  rows: table.lastRow - table.headingRow + 1,
  columns: table.lastColumn - table.firstColumn + 1,
});

/**
 * Makes the standing tables fit before the cells are exchanged, and returns the wanted tables that
 * have to be made afterwards. A table whose heading row moved is made anew, and so is every table
 * of another size before Excel could resize one: inserting or deleting rows instead would break
 * formulas that point at the cells. Formulas elsewhere that named a table made anew then hold plain
 * references to the cells that it covered.
 */
export function fitTables(
  sheet: Excel.Worksheet,
  standing: readonly StandingTable[],
  wanted: readonly StandingTable[],
): readonly StandingTable[] {
  const kept = new Set<string>();
  for (const { name, area } of standing) {
    const table = sheet.tables.getItem(name);
    table.clearFilters();
    const next = wanted.find((each) => each.name.toLowerCase() === name.toLowerCase());
    if (next !== undefined && fit(sheet, table, area, next.area)) kept.add(name.toLowerCase());
    else table.convertToRange();
  }
  return wanted.filter(({ name }) => !kept.has(name.toLowerCase()));
}

/** A range and not its address: Excel looks for an address without a sheet on the one in front. */
const rangeOf = (sheet: Excel.Worksheet, { row, column, rows, columns }: Area): Excel.Range =>
  sheet.getRangeByIndexes(row, column, rows, columns);

/** Gives the table its new size; `false` where Excel can't. */
function fit(sheet: Excel.Worksheet, table: Excel.Table, area: Area, wanted: Area): boolean {
  if (addressOf(area) === addressOf(wanted)) return true;
  const isInPlace = area.row === wanted.row && area.column === wanted.column;
  if (!isInPlace || !hasExcelApi("1.13")) return false;
  table.resize(rangeOf(sheet, wanted));
  return true;
}

/** Makes tables over cells that are there. Their look is ours, so the table brings none. */
export function makeTables(sheet: Excel.Worksheet, wanted: readonly StandingTable[]): void {
  for (const { name, area } of wanted) {
    const table = sheet.tables.add(rangeOf(sheet, area), true);
    table.name = name;
    table.style = "TableStyleLight1";
    table.showBandedRows = false;
  }
}
