/** Where cells are on a sheet, in points: Excel says it since 1.10; before that it is reckoned. */
import { columnPoints } from "../../workbook/columnSize";
import type { SheetSnapshot } from "../../workbook/snapshot";
import { hasExcelApi } from "./inExcel";

/** The upper left corner of a cell, in points from that of the sheet. */
export type Corner = { readonly left: number; readonly top: number };

/** A cell, and its corner as it should be by what we asked for. */
export type Anchor = { readonly row: number; readonly column: number; readonly reckoned: Corner };

/** Of rows and columns that nobody gave a size. */
const usualWidth = 48;
const usualHeight = 15;

/** Near enough: Excel rounds heights and widths to pixels, and rows of long words fit themselves. */
export function anchorAt(
  { rowHeights, columnWidths }: Pick<SheetSnapshot, "rowHeights" | "columnWidths">,
  row: number,
  column: number,
): Anchor {
  let [left, top] = [0, 0];
  for (let before = 0; before < column; before++) {
    const characters = columnWidths[before] ?? null;
    left += characters === null ? usualWidth : columnPoints(characters);
  }
  for (let before = 0; before < row; before++) top += rowHeights[before] ?? usualHeight;
  return { row, column, reckoned: { left, top } };
}

/** Asks for the corners of cells; the answer is there once the request was sent. */
export function askCorners(
  worksheet: Excel.Worksheet,
  anchors: readonly Anchor[],
): () => readonly Corner[] {
  if (!hasExcelApi("1.10")) return () => anchors.map(({ reckoned }) => reckoned);
  const cells = anchors.map(({ row, column }) => worksheet.getCell(row, column).load("left,top"));
  return () => (hasExcelApi("1.10") ? cells.map(({ left, top }) => ({ left, top })) : []);
}
