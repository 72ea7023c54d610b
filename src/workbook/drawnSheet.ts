/** A drawing turned into the sheet that it asks for, so that every host makes the same of it. */
import { rowPoints } from "./columnSize";
import { isSetIn, shownValue, type CellDress, type DrawnCell, type Drawing } from "./drawing";
import { drawingFingerprint } from "./fingerprint";
import { lookStyles, numberFormatCodes } from "./looks";
import type { CellSnapshot, CellStyle, LineStyle, Merge, SheetSnapshot } from "./snapshot";

/** Styles gathered once each; `indexOf` adds a style that is new. */
export type StyleTable = {
  readonly styles: readonly CellStyle[];
  readonly indexOf: (style: CellStyle) => number;
};

/** A table that starts with `known`. Styles are told apart by their JSON text. */
export function styleTable(known: readonly CellStyle[] = []): StyleTable {
  const styles = [...known];
  const places = new Map(known.map((style, index) => [JSON.stringify(style), index]));
  const indexOf = (style: CellStyle): number => {
    const text = JSON.stringify(style);
    const place = places.get(text);
    if (place !== undefined) return place;
    places.set(text, styles.length);
    return styles.push(style) - 1;
  };
  return { styles, indexOf };
}

/** The sheet that `drawing` asks for, under `name`; its styles are added to `table`. */
export function drawnSheet(drawing: Drawing, name: string, table: StyleTable): SheetSnapshot {
  const styleIndex = dressIndex(table);
  const rows = drawing.rows.map(({ cells }) =>
    cells.map((cell, column): CellSnapshot | null =>
      cell === null ? null : drawnCell(cell, styleIndex(cell, isSetIn(cells, column))),
    ),
  );
  return {
    name,
    visible: true,
    isProtected: false,
    mark: drawing.mark,
    written: drawing.mark === null ? null : drawingFingerprint(drawing),
    rows,
    columnWidths: drawing.columnWidths,
    rowHeights: drawing.rows.map(({ height }) => (height === undefined ? null : rowPoints(height))),
    frozenRows: drawing.frozenRows,
    frozenColumns: drawing.frozenColumns,
    merges: drawing.rows.flatMap(({ cells }, row) => mergesOf(cells, row)),
    tables: drawing.tables,
    choices: drawing.choices,
    ...(drawing.pictures === undefined ? {} : { pictures: drawing.pictures }),
    ...(drawing.charts === undefined ? {} : { charts: drawing.charts }),
    print: drawing.print,
  };
}

const mergesOf = (cells: readonly (DrawnCell | null)[], row: number): Merge[] =>
  cells.flatMap((cell, column) => {
    const span = cell?.span ?? 0;
    return span > 0 ? [{ row, column, rows: 1, columns: span + 1 }] : [];
  });

/** The index of a cell's style. A sheet has few dresses and many cells: each is looked up once. */
function dressIndex(table: StyleTable): (cell: DrawnCell, setIn: boolean) => number {
  const known = new Map<string, number>();
  return (cell, setIn) => {
    const fallback = cell.kind === "text" ? "text" : undefined;
    const { look, format = fallback, align, wrap } = cell;
    const key = `${look} ${format ?? ""} ${align ?? ""} ${wrap === true ? "wrap" : ""} ${setIn ? "in" : ""}`;
    const index = known.get(key) ?? table.indexOf(styleOf(cell, fallback, setIn));
    known.set(key, index);
    return index;
  };
}

const drawnCell = (cell: DrawnCell, style: number): CellSnapshot => ({
  value: shownValue(cell),
  ...(cell.kind === "formula" ? { formula: cell.formula } : {}),
  style,
  ...(cell.note === undefined ? {} : { note: cell.note }),
  ...(cell.input === undefined ? {} : { input: cell.input }),
});

/** The style that a dress means. `fallback` is the number format of a cell that names none. */
export function styleOf(dress: CellDress, fallback: CellDress["format"], setIn = false): CellStyle {
  const look = lookStyles[dress.look];
  const format = dress.format ?? fallback;
  return {
    size: look.size,
    ...(look.bold ? { bold: true } : {}),
    ...(look.italic ? { italic: true } : {}),
    ink: look.ink,
    ...(look.fill === undefined ? {} : { fill: look.fill }),
    ...(look.lineAbove === undefined ? {} : { lineAbove: thin(look.lineAbove) }),
    ...(look.lineBelow === undefined ? {} : { lineBelow: thin(look.lineBelow) }),
    ...(format === undefined || format === "general" ? {} : { format: numberFormatCodes[format] }),
    ...(setIn
      ? ({ align: "left", indent: true } as const)
      : dress.align === undefined
        ? {}
        : { align: dress.align }),
    alignDown: dress.wrap === true ? "top" : "middle",
    ...(dress.wrap === true ? { wrap: true } : {}),
  };
}

const thin = (ink: string): LineStyle => ({ weight: "thin", ink });
