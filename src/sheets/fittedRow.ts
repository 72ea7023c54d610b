/** Rows as high as their words need, and with all their cells on one line of sight. */
import { columnPoints } from "../workbook/columnSize";
import { isSetIn, shownValue, type DrawnCell, type DrawnRow, type Look } from "../workbook/drawing";
import { lookStyles } from "../workbook/looks";
import { wordsRow } from "./cells";
import { brokenLines, linesHeight, wrappedHeight } from "./wrapped";

const size = 10;
const padding = 6;
/** Points of words that are set in. */
const indent = 8;

/**
 * The row with its text wrapped within the columns' widths (characters) where it is too long for one
 * line; a row that is not stays as it is.
 */
export function fittedRow(drawn: DrawnRow, widths: readonly number[]): DrawnRow {
  const texts = drawn.cells.map((cell) => {
    const value = cell === null ? null : shownValue(cell);
    return typeof value === "string" && cell?.span === undefined ? value : "";
  });
  const points = (column: number): number =>
    columnPoints(widths[column] ?? 0) - padding - (isSetIn(drawn.cells, column) ? indent : 0);
  const isBold = (column: number): boolean => lookStyles[drawn.cells[column]?.look ?? "body"].bold;
  const lines = texts.map((words, column) =>
    words === "" ? 1 : brokenLines(words, points(column), size, isBold(column)).length,
  );
  const most = Math.max(...lines);
  if (most <= 1) return drawn;
  return {
    cells: drawn.cells.map((cell): DrawnCell | null =>
      cell === null ? null : { ...cell, wrap: true },
    ),
    height: linesHeight(most, size),
  };
}

/** Words joined across all the columns, as high as they need. */
export function joinedRow(words: string, look: Look, widths: readonly number[]): DrawnRow {
  const points = widths.reduce((sum, width) => sum + columnPoints(width), 0) - padding;
  const height = wrappedHeight(words, points, size);
  return wordsRow(words, look, widths.length, { wrap: true, height: height + 2 });
}

const titleSize = 16;

/** A title over all the columns, on as many lines as a long name needs. */
export function titleRow(words: string, widths: readonly number[]): DrawnRow {
  const points = widths.reduce((sum, width) => sum + columnPoints(width), 0) - padding;
  const height = Math.max(26, wrappedHeight(words, points, titleSize, true));
  const more = height > 26 ? { wrap: true } : {};
  return wordsRow(words, "title", widths.length, { ...more, height });
}
