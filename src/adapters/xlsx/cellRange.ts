/** Cells and ranges as files name them. */
import { columnIndex, columnName } from "../../core/base/cell";
import type { Merge } from "../../workbook/snapshot";
import { lastColumn, rowCount } from "./sharedFormula";
import { DamagedFile } from "./xml";

export type Corner = { readonly row: number; readonly column: number };

/** `B3` or `$B$3`. @throws DamagedFile when it is no cell of a sheet. */
export function readCell(name: string): Corner {
  const [, letters = "", digits = ""] = /^\$?([A-Za-z]{1,3})\$?(\d{1,7})$/.exec(name) ?? [];
  const [row, column] = [Number(digits) - 1, columnIndex(letters)];
  if (letters === "" || row < 0 || row >= rowCount || column > lastColumn) {
    throw new DamagedFile(`There is no cell ${name}.`);
  }
  return { row, column };
}

/** `B3:D9`, or `B3` for one cell. @throws DamagedFile when it is no range of a sheet. */
export function readRange(name: string): Merge {
  const [from = "", to = from] = name.split(":");
  const [first, last] = [readCell(from), readCell(to)];
  const [top, left] = [Math.min(first.row, last.row), Math.min(first.column, last.column)];
  return {
    row: top,
    column: left,
    rows: Math.abs(last.row - first.row) + 1,
    columns: Math.abs(last.column - first.column) + 1,
  };
}

/** `B3:D9`, or `B3` for one cell. */
export function rangeName({ row, column, rows, columns }: Merge): string {
  const first = `${columnName(column)}${row + 1}`;
  return rows === 1 && columns === 1
    ? first
    : `${first}:${columnName(column + columns - 1)}${row + rows}`;
}
