/** Rectangles of cells and their addresses, in the fake host. Rows and columns count from zero. */
import { columnIndex, columnName } from "../../src/core/base/cell";
import { badArgument } from "./hostObject";

export type Area = {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
};

export const allRows = 1_048_576;
export const allColumns = 16_384;
export const wholeSheet: Area = { row: 0, column: 0, rows: allRows, columns: allColumns };

/** One number for a cell, for use as a map's key. */
export const cellKey = (row: number, column: number): number => row * allColumns + column;
export const keyRow = (key: number): number => Math.floor(key / allColumns);
export const keyColumn = (key: number): number => key % allColumns;

/** `A1`, `$B$2:C9`, `3:5`, `A:C`; a sheet in front is left to the caller. */
export function parseArea(address: string): Area {
  const plain = address.replaceAll("$", "");
  const cells = /^([A-Za-z]{1,3})(\d{1,7})(?::([A-Za-z]{1,3})(\d{1,7}))?$/.exec(plain);
  if (cells !== null) {
    const [, letters = "", digits = "", lastLetters = letters, lastDigits = digits] = cells;
    return corners(
      Number(digits) - 1,
      columnIndex(letters),
      Number(lastDigits) - 1,
      columnIndex(lastLetters),
    );
  }
  const rows = /^(\d{1,7}):(\d{1,7})$/.exec(plain);
  if (rows !== null) {
    return corners(Number(rows[1]) - 1, 0, Number(rows[2]) - 1, allColumns - 1);
  }
  const columns = /^([A-Za-z]{1,3}):([A-Za-z]{1,3})$/.exec(plain);
  if (columns !== null) {
    const [, first = "", last = ""] = columns;
    return corners(0, columnIndex(first), allRows - 1, columnIndex(last));
  }
  return badArgument(`Not an address: ${address}`);
}

function corners(row: number, column: number, otherRow: number, otherColumn: number): Area {
  return checkedArea({
    row: Math.min(row, otherRow),
    column: Math.min(column, otherColumn),
    rows: Math.abs(otherRow - row) + 1,
    columns: Math.abs(otherColumn - column) + 1,
  });
}

/** Refuses an area that is not on the sheet. */
export function checkedArea(area: Area): Area {
  const inside =
    area.row >= 0 &&
    area.column >= 0 &&
    area.rows >= 1 &&
    area.columns >= 1 &&
    area.row + area.rows <= allRows &&
    area.column + area.columns <= allColumns;
  return inside ? area : badArgument("The range is not on the sheet.");
}

/** The address without its sheet: `B2`, `B2:D4`, `3:5` for whole rows, `A:C` for whole columns. */
export function areaAddress({ row, column, rows, columns }: Area): string {
  const [lastRow, lastColumn] = [row + rows - 1, column + columns - 1];
  if (columns === allColumns) return `${row + 1}:${lastRow + 1}`;
  if (rows === allRows) return `${columnName(column)}:${columnName(lastColumn)}`;
  const first = `${columnName(column)}${row + 1}`;
  return rows === 1 && columns === 1 ? first : `${first}:${columnName(lastColumn)}${lastRow + 1}`;
}

export const contains = (area: Area, row: number, column: number): boolean =>
  row >= area.row &&
  row < area.row + area.rows &&
  column >= area.column &&
  column < area.column + area.columns;

export const overlap = (one: Area, other: Area): boolean =>
  one.row < other.row + other.rows &&
  other.row < one.row + one.rows &&
  one.column < other.column + other.columns &&
  other.column < one.column + one.columns;

/** The smallest area around both. */
export function around(one: Area, other: Area): Area {
  const row = Math.min(one.row, other.row);
  const column = Math.min(one.column, other.column);
  return {
    row,
    column,
    rows: Math.max(one.row + one.rows, other.row + other.rows) - row,
    columns: Math.max(one.column + one.columns, other.column + other.columns) - column,
  };
}

/** The part of `area` that `bounds` covers, or `null`. */
export function within(area: Area, bounds: Area): Area | null {
  if (!overlap(area, bounds)) return null;
  const row = Math.max(area.row, bounds.row);
  const column = Math.max(area.column, bounds.column);
  return {
    row,
    column,
    rows: Math.min(area.row + area.rows, bounds.row + bounds.rows) - row,
    columns: Math.min(area.column + area.columns, bounds.column + bounds.columns) - column,
  };
}
