/**
 * Formulas that a file keeps once for many cells: each cell's own is the first one's, moved.
 */
import { columnIndex, columnName } from "../../core/base/cell";

/** What could be taken for a reference comes first: quoted text, sheet names, structured references. */
const pieces = new RegExp(
  [
    /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:[^[\]]|\[[^\]]*\])*\]/,
    /(?<![\w.$])(?<cell>\$?[A-Za-z]{1,3}\$?\d+)(?![\w.(])/,
    /(?<![\w.$])(?<columns>\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3})(?![\w.(])/,
    /(?<![\w.$])(?<rows>\$?\d+:\$?\d+)(?![\w.])/,
    /[\p{L}_\\][\p{L}\p{N}_.?\\]*/u,
  ]
    .map(({ source }) => source)
    .join("|"),
  "gu",
);

/**
 * `formula` moved by that many rows and columns: each reference moves but for its parts behind `$`.
 * A reference moved off the sheet becomes `#REF!`.
 */
export function movedFormula(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  let made = "";
  let at = 0;
  for (const { 0: piece, index, groups = {} } of formula.matchAll(pieces)) {
    const reference = groups["cell"] ?? groups["columns"] ?? groups["rows"];
    const ends = reference?.split(":").map((end) => movedEnd(end, rows, columns)) ?? [piece];
    made += formula.slice(at, index) + (ends.includes(null) ? "#REF!" : ends.join(":"));
    at = index + piece.length;
  }
  return made + formula.slice(at);
}

/** `$B3`, `B` or `3` moved; `null` where that is off the sheet. */
function movedEnd(end: string, rows: number, columns: number): string | null {
  const found = /^(\$?)([A-Za-z]*)(\$?)(\d*)$/.exec(end) ?? [];
  const [, first = "", letters = "", second = "", digits = ""] = found;
  // What lies beyond the last column or row is a name that looks like a cell.
  if (columnIndex(letters) > lastColumn || Number(digits) > rowCount) return end;
  const column = letters === "" ? "" : movedColumn(first, letters, columns);
  const row = digits === "" ? "" : movedRow(letters === "" ? first : second, digits, rows);
  return column === null || row === null ? null : column + row;
}

function movedColumn(fixed: string, letters: string, by: number): string | null {
  const column = columnIndex(letters);
  if (fixed === "$") return fixed + letters;
  const moved = column + by;
  return moved < 0 || moved > lastColumn ? null : columnName(moved);
}

function movedRow(fixed: string, digits: string, by: number): string | null {
  const row = Number(digits);
  if (fixed === "$") return fixed + digits;
  const moved = row + by;
  return moved < 1 || moved > rowCount ? null : String(moved);
}

/** The sheet's size: 16,384 columns and 1,048,576 rows. */
export const lastColumn = 16_383;
export const rowCount = 1_048_576;
