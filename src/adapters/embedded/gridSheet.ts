/** A sheet of a snapshot as the grid's own sheet: cells, widths, frozen rows, merged cells. */
import {
  BooleanNumber,
  type ICellData,
  type IFreeze,
  type IObjectArrayPrimitiveType,
  type IObjectMatrixPrimitiveType,
  type IRange,
  type IWorksheetData,
} from "@univerjs/core";
import { columnPixels } from "../../workbook/columnSize";
import type { CellSnapshot, Merge, SheetSnapshot } from "../../workbook/snapshot";
import { gridValue } from "./cells";
import { customWithRecord, type SheetRecord } from "./records";
import type { GridStyles } from "./styles";

/** Sizes in pixels, near to what spreadsheets show by themselves. */
export const defaultColumnWidth = 72;
export const defaultRowHeight = 21;
const rowsToSpare = 200;
const fewestColumns = 26;

/** A width in characters of the usual font, as pixels, and back. */
export const pixelsWide = (characters: number): number => Math.round(columnPixels(characters));
export const charactersWide = (pixels: number): number => Math.round((pixels - 5) / 0.7) / 10;

/** A height in points, as pixels, and back. */
export const pixelsHigh = (points: number): number => Math.round((points * 96) / 72);
export const pointsHigh = (pixels: number): number => Math.round(pixels * 7.5) / 10;

/** The grid's sheet without what it no longer uses. */
export type GridSheet = Omit<IWorksheetData, "zoomRatio" | "scrollTop" | "scrollLeft">;

export type GridCells = IObjectMatrixPrimitiveType<ICellData>;

/** The grid's sheet with the id `id` for `sheet`; its tables, notes and drop-downs come apart. */
export function gridSheet(sheet: SheetSnapshot, id: string, styles: GridStyles): GridSheet {
  return {
    id,
    name: sheet.name,
    tabColor: "",
    hidden: sheet.visible ? BooleanNumber.FALSE : BooleanNumber.TRUE,
    freeze: gridFreeze(sheet),
    ...gridSize(sheet),
    defaultColumnWidth,
    defaultRowHeight,
    mergeData: sheet.merges.map(mergeRange),
    cellData: gridCells(sheet, styles),
    rowData: sized(sheet.rowHeights, (height) => ({
      h: pixelsHigh(height),
      ia: BooleanNumber.FALSE,
    })),
    columnData: sized(sheet.columnWidths, (width) => ({ w: pixelsWide(width) })),
    showGridlines: BooleanNumber.TRUE,
    rowHeader: { width: 46 },
    columnHeader: { height: 20 },
    rightToLeft: BooleanNumber.FALSE,
    custom: customWithRecord(recordOf(sheet, id)),
  };
}

/** What we keep about `sheet` once it has the id `id`. */
export const recordOf = (sheet: SheetSnapshot, id: string): SheetRecord => ({
  sheetId: id,
  mark: sheet.mark,
  written: sheet.written,
  print: sheet.print,
  ...(sheet.pictures === undefined ? {} : { pictures: sheet.pictures }),
  ...(sheet.charts === undefined ? {} : { charts: sheet.charts }),
});

export const gridSize = (
  sheet: Pick<SheetSnapshot, "rows" | "columnWidths">,
): { readonly rowCount: number; readonly columnCount: number } => ({
  rowCount: sheet.rows.length + rowsToSpare,
  columnCount: Math.max(
    fewestColumns,
    sheet.columnWidths.length,
    sheet.rows.reduce((most, row) => Math.max(most, row.length), 0) + 2,
  ),
});

export const gridFreeze = (
  sheet: Pick<SheetSnapshot, "frozenRows" | "frozenColumns">,
): IFreeze => ({
  xSplit: sheet.frozenColumns,
  ySplit: sheet.frozenRows,
  startRow: sheet.frozenRows > 0 ? sheet.frozenRows : -1,
  startColumn: sheet.frozenColumns > 0 ? sheet.frozenColumns : -1,
});

export const mergeRange = ({ row, column, rows, columns }: Merge): IRange => ({
  startRow: row,
  startColumn: column,
  endRow: row + rows - 1,
  endColumn: column + columns - 1,
});

/** The cells of `sheet`, each with its style by the id that it has in `styles`. */
export function gridCells(sheet: SheetSnapshot, { ids }: GridStyles): GridCells {
  const cells: Record<number, Record<number, ICellData>> = {};
  const spilled = spilledCells(sheet);
  for (const [row, snapshots] of sheet.rows.entries()) {
    const line: Record<number, ICellData> = {};
    for (const [column, cell] of snapshots.entries()) {
      if (cell === null) continue;
      const made = gridCell(cell, ids, spilled.has(spillKey(row, column)));
      if (made !== null) line[column] = made;
    }
    cells[row] = line;
  }
  return cells;
}

function gridCell(
  cell: CellSnapshot,
  styles: readonly string[],
  isSpilled: boolean,
): ICellData | null {
  const style = cell.style === undefined ? undefined : styles[cell.style];
  const made: ICellData = {
    // An array formula without a result is worked out at once, and so fills its cells again.
    ...(isSpilled || cell.spill ? {} : gridValue(cell.value)),
    ...(cell.formula === undefined ? {} : { f: cell.formula }),
    ...(style === undefined ? {} : { s: style }),
  };
  return Object.keys(made).length === 0 ? null : made;
}

const spillKey = (row: number, column: number): string => `${row},${column}`;

/** The cells that only show what an array formula elsewhere comes to: the formula fills them anew. */
function spilledCells(sheet: SheetSnapshot): ReadonlySet<string> {
  const found = new Set<string>();
  for (const [row, cells] of sheet.rows.entries()) {
    for (const [column, cell] of cells.entries()) {
      if (!cell?.spill) continue;
      const { rows, columns } = cell.spill;
      for (let down = 0; down < rows; down++) {
        for (let across = 0; across < columns; across++) {
          if (down + across > 0) found.add(spillKey(row + down, column + across));
        }
      }
    }
  }
  return found;
}

function sized<Size>(
  sizes: readonly (number | null)[],
  make: (size: number) => Size,
): IObjectArrayPrimitiveType<Size> {
  const made: Record<number, Size> = {};
  for (const [index, size] of sizes.entries()) if (size !== null) made[index] = make(size);
  return made;
}
