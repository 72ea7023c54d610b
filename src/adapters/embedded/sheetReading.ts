/** Reads the cells of one sheet of the grid: values with their exact types, spilled ones included. */
import type { IStyleData, Nullable, Workbook as GridWorkbook, Worksheet } from "@univerjs/core";
import { FormulaDataModel, LexerTreeBuilder } from "@univerjs/engine-formula";
import type { Block, CellValue } from "../../core/base/cell";
import { isDateFormat } from "../../workbook/dateFormats";
import type { TypedCell } from "../../workbook/fingerprint";
import { places, type CellRows } from "./cellRows";
import { cellValue } from "./cells";
import type { Engine } from "./engine";

/** Rows and columns from zero, both ends included. */
export type Area = {
  readonly firstRow: number;
  readonly firstColumn: number;
  readonly lastRow: number;
  readonly lastColumn: number;
};

export type SheetReading = {
  readonly valueAt: (row: number, column: number) => CellValue;
  /** With `=` in front; `undefined` where a value was typed, or nothing. */
  readonly formulaAt: (row: number, column: number) => string | undefined;
  /** The cells an array formula fills, its own included. */
  readonly spillAt: (row: number, column: number) => Area | undefined;
  /** Each cell that only shows what an array formula elsewhere comes to. */
  readonly spilledPlaces: () => Generator<readonly [row: number, column: number]>;
  /** The smallest area with all cells that hold something, or `null` on a blank sheet. */
  readonly used: () => Area | null;
  /** What was typed, row by row: a formula's spilled results are not. */
  readonly typedCells: () => Generator<TypedCell>;
};

/** Looks at `sheet` as it is now; a reading is not kept up to date. */
export function readSheet(
  { injector }: Engine,
  book: GridWorkbook,
  sheet: Worksheet,
): SheetReading {
  const formulas = injector.get(FormulaDataModel);
  const [unit, id] = [book.getUnitId(), sheet.getSheetId()];
  const typed: CellRows = sheet.getCellMatrix().getMatrix();
  const spilled: CellRows = formulas.getArrayFormulaCellData()[unit]?.[id] ?? {};
  const spillAreas = formulas.getArrayFormulaRange()[unit]?.[id] ?? {};
  const isDate = dateTest(book);
  const shared = sharedFormulas(typed, injector.get(LexerTreeBuilder));

  const valueAt = (row: number, column: number): CellValue => {
    const cell = typed[row]?.[column];
    const value = cellValue(cell, isDate(cell?.s));
    return value ?? cellValue(spilled[row]?.[column], false);
  };
  const formulaAt = (row: number, column: number): string | undefined => {
    const cell = typed[row]?.[column];
    if (!cell) return undefined;
    if (cell.f) return cell.f;
    return cell.si ? shared(cell.si, row, column) : undefined;
  };
  const spillAt = (row: number, column: number): Area | undefined => {
    const area = spillAreas[row]?.[column];
    return area && area.endRow >= row && area.endColumn >= column
      ? {
          firstRow: area.startRow,
          firstColumn: area.startColumn,
          lastRow: area.endRow,
          lastColumn: area.endColumn,
        }
      : undefined;
  };
  return {
    valueAt,
    formulaAt,
    spillAt,
    used: () =>
      usedArea(
        [typed, spilled],
        (row, column) => formulaAt(row, column) !== undefined || valueAt(row, column) !== null,
      ),
    *spilledPlaces() {
      for (const [row, column] of places(spilled)) {
        if (formulaAt(row, column) === undefined) yield [row, column];
      }
    },
    *typedCells() {
      for (const [row, column] of places(typed)) {
        const formula = formulaAt(row, column);
        const cell = typed[row]?.[column];
        const value = cellValue(cell, isDate(cell?.s));
        if (formula !== undefined) yield { row, column, value, formula };
        else if (value !== null) yield { row, column, value };
      }
    },
  };
}

/** A formula that was filled over many cells stands in one of them; the others only have its id. */
function sharedFormulas(
  cells: CellRows,
  lexer: LexerTreeBuilder,
): (id: string, row: number, column: number) => string | undefined {
  let sources: Map<string, readonly [row: number, column: number, formula: string]> | null = null;
  const findSources = (): NonNullable<typeof sources> => {
    const found: NonNullable<typeof sources> = new Map();
    for (const [row, column] of places(cells)) {
      const { si, f } = cells[row]?.[column] ?? {};
      if (si && f) found.set(si, [row, column, f]);
    }
    return found;
  };
  return (id, row, column) => {
    const source = (sources ??= findSources()).get(id);
    if (source === undefined) return undefined;
    const [fromRow, fromColumn, formula] = source;
    return lexer.moveFormulaRefOffset(formula, column - fromColumn, row - fromRow);
  };
}

/** The values of `area` as a block; `null` makes a block without rows. */
export function readBlock(reading: SheetReading, sheet: string, area: Area | null): Block {
  if (area === null) return { sheet, row: 0, column: 0, rows: [] };
  const { firstRow, firstColumn, lastRow, lastColumn } = area;
  const rows = Array.from({ length: lastRow - firstRow + 1 }, (_, down) =>
    Array.from({ length: lastColumn - firstColumn + 1 }, (__, across) =>
      reading.valueAt(firstRow + down, firstColumn + across),
    ),
  );
  return { sheet, row: firstRow, column: firstColumn, rows };
}

function usedArea(
  layers: readonly CellRows[],
  holds: (row: number, column: number) => boolean,
): Area | null {
  let area: Area | null = null;
  for (const layer of layers) {
    for (const [row, column] of places(layer)) {
      if (holds(row, column))
        area = area === null ? oneCell(row, column) : widen(area, row, column);
    }
  }
  return area;
}

const oneCell = (row: number, column: number): Area => ({
  firstRow: row,
  firstColumn: column,
  lastRow: row,
  lastColumn: column,
});

const widen = (area: Area, row: number, column: number): Area => ({
  firstRow: Math.min(area.firstRow, row),
  firstColumn: Math.min(area.firstColumn, column),
  lastRow: Math.max(area.lastRow, row),
  lastColumn: Math.max(area.lastColumn, column),
});

/** Whether a cell's style shows dates; asked once for each style of the workbook. */
function dateTest(book: GridWorkbook): (style: Nullable<IStyleData | string>) => boolean {
  const known = new Map<string, boolean>();
  const shows = (style: Nullable<IStyleData>): boolean =>
    style?.n ? isDateFormat(style.n.pattern) : false;
  return (style) => {
    if (typeof style !== "string") return shows(style);
    const answer = known.get(style) ?? shows(book.getStyles().get(style));
    known.set(style, answer);
    return answer;
  };
}
