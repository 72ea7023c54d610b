/** What a sheet has besides its cells: widths, heights, frozen rows, print set-up. */
import { columnName } from "../../core/base/cell";
import { columnPoints, rowPoints } from "../../workbook/columnSize";
import type { Drawing, PrintSetup } from "../../workbook/drawing";
import { printCodes } from "../../workbook/printText";
import { addressLists, runsByKey } from "./runs";

export type Dress = {
  /** Characters, one per column. */
  readonly widths: readonly number[];
  /** Points for runs of rows; rows that are not here have the height that their text needs. */
  readonly heights: readonly { readonly points: number; readonly addresses: readonly string[] }[];
  /** How many rows are drawn. */
  readonly rows: number;
  readonly frozenRows: number;
  readonly frozenColumns: number;
  readonly print: PrintSetup;
};

export function dressOf(drawing: Drawing): Dress {
  const heights = runsByKey(
    drawing.rows.map(({ height }) => [height === undefined ? null : rowPoints(height)]),
  );
  return {
    widths: drawing.columnWidths,
    heights: Array.from(heights, ([points, areas]) => ({
      points,
      addresses: addressLists(areas),
    })),
    rows: drawing.rows.length,
    frozenRows: drawing.frozenRows,
    frozenColumns: drawing.frozenColumns,
    print: drawing.print,
  };
}

/** About how many settings `putLayout` and `putPrint` send, for making room. */
export const settingsIn = ({ widths, heights, print }: Dress): number =>
  widths.length + heights.length + print.breaksBefore.length + 25;

/** Widths, heights and frozen panes. */
export function putLayout(sheet: Excel.Worksheet, dress: Dress): void {
  for (const [column, characters] of dress.widths.entries()) {
    sheet.getRangeByIndexes(0, column, 1, 1).getEntireColumn().format.columnWidth =
      columnPoints(characters);
  }
  for (const { points: height, addresses } of dress.heights) {
    for (const list of addresses) sheet.getRanges(list).format.rowHeight = height;
  }
  const { frozenRows, frozenColumns } = dress;
  if (frozenRows > 0 && frozenColumns > 0) {
    sheet.freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, frozenRows, frozenColumns));
  } else if (frozenRows > 0) {
    sheet.freezePanes.freezeRows(frozenRows);
  } else if (frozenColumns > 0) {
    sheet.freezePanes.freezeColumns(frozenColumns);
  }
}

/** Undoes what an earlier drawing or a person set: hidden rows and columns, heights, panes. */
export function clearLayout(sheet: Excel.Worksheet, dress: Dress): void {
  const rows = sheet.getRangeByIndexes(0, 0, Math.max(dress.rows, 1), 1).getEntireRow();
  rows.rowHidden = false;
  rows.format.autofitRows();
  if (dress.widths.length > 0) {
    sheet.getRangeByIndexes(0, 0, 1, dress.widths.length).getEntireColumn().columnHidden = false;
  }
  sheet.freezePanes.unfreeze();
}

const pointsPerInch = 72;

/** Page set-up. Some hosts refuse it where no printer is installed. */
export function putPrint(sheet: Excel.Worksheet, print: PrintSetup): void {
  const { pageLayout, horizontalPageBreaks } = sheet;
  pageLayout.orientation = print.orientation === "landscape" ? "Landscape" : "Portrait";
  pageLayout.zoom = print.fitToOnePageWide ? { horizontalFitToPages: 1 } : { scale: 100 };
  if (print.titleRows !== undefined) {
    const { first, last } = print.titleRows;
    pageLayout.setPrintTitleRows(`$${first + 1}:$${last + 1}`);
  }
  if (print.columns !== undefined) {
    const { first, last } = print.columns;
    pageLayout.setPrintArea(`$${columnName(first)}:$${columnName(last)}`);
  }
  if (print.paper !== undefined) pageLayout.paperSize = print.paper === "a4" ? "A4" : "Letter";
  if (print.margins !== undefined) {
    pageLayout.topMargin = print.margins.top * pointsPerInch;
    pageLayout.bottomMargin = print.margins.bottom * pointsPerInch;
    pageLayout.leftMargin = print.margins.left * pointsPerInch;
    pageLayout.rightMargin = print.margins.right * pointsPerInch;
  }
  const pages = pageLayout.headersFooters.defaultForAllPages;
  const header = printCodes(print.header);
  const footer = printCodes(print.footer);
  pages.leftHeader = header.left;
  pages.centerHeader = header.center;
  pages.rightHeader = header.right;
  pages.leftFooter = footer.left;
  pages.centerFooter = footer.center;
  pages.rightFooter = footer.right;
  horizontalPageBreaks.removePageBreaks();
  for (const row of print.breaksBefore) horizontalPageBreaks.add(`A${row + 1}`);
}
