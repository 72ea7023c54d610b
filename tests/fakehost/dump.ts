/** Everything in the fake workbook that a person could miss, as plain data for comparing. */
import { areaAddress, keyColumn, keyRow } from "./areas";
import { isEmpty, type FakeBook, type FakeCell } from "./book";
import { cellName } from "../../src/core/base/cell";

/** Sheets in order with all that is on them, tables, names, custom parts. */
export const dump = (book: FakeBook): unknown => ({
  active: book.active.name,
  sheets: book.sheets.map((sheet) => ({
    name: sheet.name,
    visibility: sheet.visibility,
    cells: Object.fromEntries(
      [...sheet.cells]
        .filter(([, cell]) => !isBare(cell))
        .sort(([one], [other]) => one - other)
        .map(([key, cell]) => [at(key), cell]),
    ),
    notes: [...sheet.notes].map(([key, text]) => [at(key), text]),
    comments: [...sheet.comments].map(([key, text]) => [at(key), text]),
    shapes: sheet.shapes.map(({ name, image, looks }) => ({ name, image, looks })),
    charts: sheet.charts.map(({ name, looks, series }) => ({ name, looks, series })),
    merges: sheet.merges.map(areaAddress).sort(),
    widths: [...sheet.columnWidths],
    heights: [...sheet.rowHeights].sort(([one], [other]) => one - other),
    hiddenRows: [...sheet.hiddenRows],
    frozen: sheet.frozen,
    page: sheet.page,
    headers: sheet.headers,
    titleRows: sheet.titleRows,
    printArea: sheet.printArea,
    breaks: sheet.breaks,
    tables: book.tables
      .filter((table) => table.sheet === sheet)
      .map(({ name, area, looks }) => ({ name, area: areaAddress(area), looks })),
  })),
  names: book.names
    .map(({ name, formula, visible, sheet }) => ({ name, formula, visible, sheet: sheet?.name }))
    .sort((one, other) => (one.name + one.formula < other.name + other.formula ? -1 : 1)),
  parts: book.parts.map(({ xml }) => xml),
});

const at = (key: number): string => cellName({ row: keyRow(key), column: keyColumn(key) });

const isBare = (cell: FakeCell): boolean =>
  isEmpty(cell) &&
  cell.format === "General" &&
  cell.validation === null &&
  Object.keys(cell.style).length === 0;
