/**
 * Formulas that a file keeps once for many cells: each cell's own is the first one's, moved.
 */
import { columnIndex, columnName } from "../../core/base/cell";

/** What is no reference is left as it is: text in quotes, sheet names, structured references, words. */
const token =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:[^[\]]|\[[^\]]*\])*\]|(?<![\w.$])\$?[A-Za-z]{1,3}\$?\d+(?![\w.(])|(?<![\w.$])\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}(?![\w.(])|(?<![\w.$])\$?\d+:\$?\d+(?![\w.])|[\p{L}_\\][\p{L}\p{N}_.?\\]*/gu;

/**
 * `formula` moved by that many rows and columns: each reference moves but for its parts behind `$`.
 * A reference moved off the sheet becomes `#REF!`.
 */
export function movedFormula(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  return formula.replace(token, (word) => {
    const cell = /^(\$?)([A-Za-z]{1,3})(\$?)(\d+)$/.exec(word);
    if (cell !== null) {
      const [, fixedColumn = "", letters = "", fixedRow = "", digits = ""] = cell;
      const column = movedColumn(fixedColumn, letters, columns);
      const row = movedRow(fixedRow, digits, rows);
      return column === null || row === null ? "#REF!" : column + row;
    }
    const span = /^(\$?)([A-Za-z]+|\d+):(\$?)([A-Za-z]+|\d+)$/.exec(word);
    if (span === null) return word;
    const [, fixedFrom = "", from = "", fixedTo = "", to = ""] = span;
    const moved = /\d/.test(from) ? movedRow : movedColumn;
    const by = /\d/.test(from) ? rows : columns;
    const ends = [moved(fixedFrom, from, by), moved(fixedTo, to, by)];
    return ends.includes(null) ? "#REF!" : ends.join(":");
  });
}

function movedColumn(fixed: string, letters: string, by: number): string | null {
  const column = columnIndex(letters);
  // Letters beyond the last column are a name, not a reference.
  if (column > lastColumn || fixed === "$") return fixed + letters;
  const moved = column + by;
  return moved < 0 || moved > lastColumn ? null : columnName(moved);
}

function movedRow(fixed: string, digits: string, by: number): string | null {
  const row = Number(digits);
  if (row > rowCount || fixed === "$") return fixed + digits;
  const moved = row + by;
  return moved < 1 || moved > rowCount ? null : String(moved);
}

/** The sheet's size: 16,384 columns and 1,048,576 rows. */
export const lastColumn = 16_383;
export const rowCount = 1_048_576;
