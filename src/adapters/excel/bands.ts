/** Reading large areas in few requests: whole rows in bands, as many cells at once as an answer holds. */
import { isExcelError } from "./excelFaults";

/** A rectangle of cells; rows and columns count from zero. */
export type Area = {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
};

export type SheetArea = Area & { readonly sheet: Excel.Worksheet };

/** Asks where a range is. */
export const loadArea = (range: Excel.Range): Excel.Range =>
  range.load("rowIndex,columnIndex,rowCount,columnCount");

/** Where a range is that was loaded with `loadArea`. */
export const areaOf = ({ rowIndex, columnIndex, rowCount, columnCount }: Excel.Range): Area => ({
  row: rowIndex,
  column: columnIndex,
  rows: rowCount,
  columns: columnCount,
});

/** From the sheet's first cell to the last one of all these areas. */
export const fromFirstCell = (...areas: readonly Area[]): Area => ({
  row: 0,
  column: 0,
  rows: Math.max(1, ...areas.map(({ row, rows }) => row + rows)),
  columns: Math.max(1, ...areas.map(({ column, columns }) => column + columns)),
});

/**
 * An answer may have 5 MB. Three properties of a cell take 40 bytes and its text; with texts of
 * ordinary length this leaves room. An answer that is too large all the same is asked for in halves.
 */
const cellsAtOnce = 40_000;

/** Loads each area in bands of rows, top to bottom. `load` says what of a band is wanted. */
export async function loadBands(
  context: Excel.RequestContext,
  areas: readonly SheetArea[],
  load: (band: Excel.Range) => void,
): Promise<readonly (readonly Excel.Range[])[]> {
  const loaded = areas.map((): Excel.Range[] => []);
  let waiting = areas.map((area, index) => ({ ...area, index }));
  let budget = cellsAtOnce;
  while (waiting.length > 0) {
    const { now, later } = fill(waiting, budget);
    const bands = now.map(({ sheet, row, column, rows, columns, index }) => {
      const band = sheet.getRangeByIndexes(row, column, rows, columns);
      load(band);
      return { band, index };
    });
    try {
      await context.sync();
    } catch (error) {
      const isTooMuch = isExcelError(error) && error.code === "ResponsePayloadSizeLimitExceeded";
      const cells = now.reduce((sum, { rows, columns }) => sum + rows * columns, 0);
      if (!isTooMuch || (now.length === 1 && now[0]?.rows === 1)) throw error;
      budget = Math.max(Math.floor(cells / 2), 1);
      continue;
    }
    for (const { band, index } of bands) loaded[index]?.push(band);
    waiting = later;
  }
  return loaded;
}

type Waiting = SheetArea & { readonly index: number };

/** Takes areas, and rows of the last one, until `budget` cells are taken; one row at least. */
function fill(
  waiting: readonly Waiting[],
  budget: number,
): { readonly now: readonly Waiting[]; readonly later: Waiting[] } {
  const now: Waiting[] = [];
  let left = budget;
  for (const [at, area] of waiting.entries()) {
    const most = Math.floor(left / area.columns);
    // A few rows more than fit are not worth a request of their own.
    const fits = area.rows <= most * 1.05 ? area.rows : Math.min(area.rows, most);
    const rows = now.length === 0 ? Math.max(fits, 1) : fits;
    if (rows > 0) now.push({ ...area, rows });
    left -= rows * area.columns;
    if (rows < area.rows) {
      const rest = { ...area, row: area.row + rows, rows: area.rows - rows };
      return { now, later: [rest, ...waiting.slice(at + 1)] };
    }
  }
  return { now, later: [] };
}
