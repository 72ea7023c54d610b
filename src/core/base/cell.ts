/** What a spreadsheet cell can hold, and where a cell is. Every host's reader makes these. */
import { dateSerial, dateText } from "./date";

/** A date as the spreadsheet keeps it: days since 1899-12-30, with the time as the fraction. */
export type DateValue = { readonly kind: "date"; readonly serial: number };

/** A cell that shows an error such as `#N/A`. */
export type ErrorValue = { readonly kind: "error"; readonly error: string };

/** The value of one cell. `null` is a blank cell; a formula's cell has the value of its result. */
export type CellValue = string | number | boolean | null | DateValue | ErrorValue;

/** One cell of one sheet; `row` and `column` count from zero. */
export type CellPlace = { readonly sheet: string; readonly row: number; readonly column: number };

/** A value with where it was typed, so that a finding can name its cell; `null` for what no sheet holds. */
export type TypedCell = { readonly value: CellValue; readonly place: CellPlace | null };

/**
 * A rectangle of cells as read, whose first cell is at `row`, `column` (from zero) of `sheet`.
 * Rows may differ in length; a cell beyond a row's end is blank.
 */
export type Block = {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: readonly (readonly CellValue[])[];
};

/** `0` is `A`, `25` is `Z`, `26` is `AA`. */
export function columnName(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : columnName(Math.floor(column / 26) - 1) + last;
}

/** `A` is `0`, `AA` is `26`; letters of either case. */
export function columnIndex(name: string): number {
  let index = 0;
  for (const letter of name.toUpperCase()) index = index * 26 + letter.charCodeAt(0) - 64;
  return index - 1;
}

/** The cell without its sheet, such as `D7`. */
export const cellName = (place: Pick<CellPlace, "row" | "column">): string =>
  `${columnName(place.column)}${place.row + 1}`;

/** A sheet's name as formulas write it: quoted unless it is a plain word that no cell could be. */
export function sheetReference(sheet: string): string {
  const plain =
    /^[A-Za-z_][A-Za-z0-9_]*$/.test(sheet) && !/^([A-Za-z]{1,3}\d+|[Rr]\d*[Cc]\d*)$/.test(sheet);
  return plain ? sheet : `'${sheet.replaceAll("'", "''")}'`;
}

/** The cell with its sheet, such as `Schedule!D7` or `'Door list'!D7`. */
export const placeName = (place: CellPlace): string =>
  `${sheetReference(place.sheet)}!${cellName(place)}`;

/** The value as a person would see it, for messages: text as it is, blanks as the empty text. */
export function cellText(value: CellValue): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "object")
    return value.kind === "error" ? value.error : dateText(value.serial);
  return String(value);
}

/** Whether there is nothing to read: a blank cell, or text of nothing but white space. */
export const isBlank = (value: CellValue): boolean =>
  value === null || (typeof value === "string" && value.trim() === "");

/** The serial of a date cell, or of a text such as `2026-07-31`; `null` for anything else. */
export function readDate(value: CellValue): number | null {
  if (typeof value === "object" && value?.kind === "date") return value.serial;
  const match =
    typeof value === "string" ? /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(value.trim()) : null;
  if (match === null) return null;
  const [, year, month, day] = match;
  return dateSerial(Number(year), Number(month), Number(day));
}

/** Whether two cells hold the same; blank text is not a blank cell. */
export function isSameValue(one: CellValue, other: CellValue): boolean {
  if (one === null || other === null || typeof one !== "object" || typeof other !== "object") {
    return Object.is(one, other);
  }
  return one.kind === "date"
    ? other.kind === "date" && one.serial === other.serial
    : other.kind === "error" && one.error === other.error;
}

/** Whether two rows hold the same; a cell beyond a row's end is blank. */
export function isSameRow(one: readonly CellValue[], other: readonly CellValue[]): boolean {
  const width = Math.max(one.length, other.length);
  for (let column = 0; column < width; column += 1) {
    if (!isSameValue(one[column] ?? null, other[column] ?? null)) return false;
  }
  return true;
}
