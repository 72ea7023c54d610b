/** Where the columns of a hardware sheet stand, and rows made of cells by column. */
import { bandMark } from "../../core/corrections/rowName";
import type { DrawnCell, DrawnRow, Look } from "../../workbook/drawing";
import { bandRow, text } from "../cells";
import { hardwareColumns, type HardwareColumn, type HardwareColumnKey } from "./hardwareColumns";
import type { HardwareWish } from "./hardwareWish";
import { at } from "../reference";

export type HardwareLayout = {
  readonly wish: HardwareWish;
  readonly columns: readonly HardwareColumn[];
  readonly width: number;
  /** `null` for a column that this sheet does not have. */
  readonly columnOf: (key: HardwareColumnKey) => number | null;
};

export type CellsByColumn = Readonly<Partial<Record<HardwareColumnKey, DrawnCell>>>;

/** The columns for a wish: without those of costs where it asks for none. */
export function hardwareLayout(wish: HardwareWish): HardwareLayout {
  const columns = hardwareColumns.filter((column) => wish.withCosts || !column.isCost);
  const places = new Map(columns.map(({ key }, index) => [key, index]));
  return { wish, columns, width: columns.length, columnOf: (key) => places.get(key) ?? null };
}

/** A row with these cells; a cell whose column the sheet does not have is left out. */
export const cellsRow = ({ columns }: HardwareLayout, cells: CellsByColumn): DrawnRow => ({
  cells: columns.map(({ key }) => cells[key] ?? null),
});

/** A row of one look that is no line: a title, a subtotal. */
export function band(layout: HardwareLayout, look: Look, cells: CellsByColumn): DrawnRow {
  const marked = { ...cells, line: text(bandMark) };
  const { cells: drawn } = cellsRow(layout, marked);
  return bandRow(
    look,
    layout.width,
    Object.fromEntries(drawn.flatMap((cell, column) => (cell === null ? [] : [[column, cell]]))),
  );
}

/** References to the cells of a row (from zero), such as `D6`; `0` for a column that is not there. */
export const referencesIn =
  ({ columnOf }: HardwareLayout, row: number) =>
  (key: HardwareColumnKey): string => {
    const column = columnOf(key);
    return column === null ? "0" : at(row, column);
  };
