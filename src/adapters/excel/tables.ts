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
 * have to be made afterwards. A table whose heading row moved is made anew: formulas that named it
 * then hold plain references to the cells that it covered.
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
    if (next !== undefined && canFit(area, next.area)) {
      resize(sheet, table, area, next.area);
      kept.add(name.toLowerCase());
    } else {
      table.convertToRange();
    }
  }
  return wanted.filter(({ name }) => !kept.has(name.toLowerCase()));
}

const canFit = (area: Area, wanted: Area): boolean =>
  area.row === wanted.row &&
  area.column === wanted.column &&
  (hasExcelApi("1.13") || area.columns === wanted.columns);

function resize(sheet: Excel.Worksheet, table: Excel.Table, area: Area, wanted: Area): void {
  if (addressOf(area) === addressOf(wanted)) return;
  if (hasExcelApi("1.13")) {
    table.resize(addressOf(wanted));
    return;
  }
  const more = wanted.rows - area.rows;
  if (more > 0) {
    const blank = Array.from({ length: more }, () =>
      Array.from({ length: area.columns }, () => ""),
    );
    table.rows.add(undefined, blank);
  } else {
    sheet
      .getRangeByIndexes(wanted.row + wanted.rows, area.column, -more, area.columns)
      .delete("Up");
  }
}

/** Makes tables over cells that are there. Their look is ours, so the table brings none. */
export function makeTables(sheet: Excel.Worksheet, wanted: readonly StandingTable[]): void {
  for (const { name, area } of wanted) {
    const table = sheet.tables.add(addressOf(area), true);
    table.name = name;
    table.style = "TableStyleLight1";
    table.showBandedRows = false;
  }
}
