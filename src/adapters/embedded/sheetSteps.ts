/** The steps that put a sheet into the grid, move one aside, or fill one anew. */
import type {
  ICellData,
  IFreeze,
  IWorksheetData,
  Workbook as GridWorkbook,
  Worksheet,
} from "@univerjs/core";
import {
  AddWorksheetMergeMutation,
  InsertSheetMutation,
  RemoveSheetMutation,
  RemoveWorksheetMergeMutation,
  SetFrozenMutation,
  SetRangeValuesMutation,
  SetWorksheetColWidthMutation,
  SetWorksheetColumnCountMutation,
  SetWorksheetNameMutation,
  SetWorksheetRowCountMutation,
  SetWorksheetRowHeightMutation,
} from "@univerjs/sheets";
import { withOtherNames, type OtherNames } from "../../workbook/formulaNames";
import type { SheetSnapshot } from "../../workbook/snapshot";
import { freeTableName } from "../../workbook/tableNames";
import { places } from "./cellRows";
import { DressCellsMutation } from "./dressCells";
import type { Engine } from "./engine";
import { defaultColumnWidth, defaultRowHeight, recordOf, type GridSheet } from "./gridSheet";
import { SetRecordMutation, sheetRecord } from "./records";
import {
  addParts,
  removeParts,
  renameTable,
  sheetIds,
  tablesOf,
  type SheetIds,
} from "./sheetParts";
import { ownFreeze } from "./shownFreeze";
import { readSheet, type SheetReading } from "./sheetReading";
import { reversed, step, type Step } from "./steps";
import type { GridStyles } from "./styles";

/** A sheet to be put into the grid: in our words, and in the grid's under the name it is to have. */
export type SheetToPut = {
  readonly sheet: SheetSnapshot;
  readonly made: GridSheet;
  readonly styles: GridStyles;
};

/** Puts a new sheet at `index`. */
export function insertSheet(
  book: GridWorkbook,
  { made, sheet, styles }: SheetToPut,
  index: number,
): Step[] {
  const ids = { unitId: book.getUnitId(), subUnitId: made.id };
  return [
    {
      redo: {
        id: InsertSheetMutation.id,
        params: { unitId: ids.unitId, index, sheet: made, styles: styles.byId },
      },
      undo: { id: RemoveSheetMutation.id, params: { ...ids, subUnitName: made.name } },
    },
    ...addParts(sheet, ids),
  ];
}

/**
 * Gives the sheet and its tables other names; it is the person's from then on. Its own formulas go
 * on pointing at itself. The names of its tables are added to `tableNames`.
 */
export function setAside(
  engine: Engine,
  book: GridWorkbook,
  old: Worksheet,
  keptAs: string,
  tableNames: string[],
): Step[] {
  const ids = sheetIds(old);
  const record = sheetRecord(old);
  const tables = tablesOf(engine, ids).map((table) => {
    const name = freeTableName(table.name, tableNames);
    tableNames.push(name);
    return { table, name };
  });
  const { before, after } = renamedFormulas(
    readSheet(engine, book, old),
    old,
    new Map([[old.getName().toLowerCase(), keptAs]]),
    new Map(tables.map(({ table, name }) => [table.name.toLowerCase(), name])),
  );
  return [
    step(SetWorksheetNameMutation.id, { ...ids, name: keptAs }, { ...ids, name: old.getName() }),
    step(
      SetRecordMutation.id,
      { ...ids, record: record && { ...record, mark: null, written: null } },
      { ...ids, record },
    ),
    ...tables.map(({ table, name }) => renameTable(ids, table, name)),
    ...(Object.keys(after).length === 0
      ? []
      : [
          step(
            SetRangeValuesMutation.id,
            { ...ids, cellValue: after },
            { ...ids, cellValue: before },
          ),
        ]),
  ];
}

type FormulaCells = Record<number, Record<number, { readonly f: string }>>;

/** The cells whose formulas say one of the names, before and after. */
function renamedFormulas(
  reading: SheetReading,
  sheet: Worksheet,
  sheetNames: OtherNames,
  tableNames: OtherNames,
): { readonly before: FormulaCells; readonly after: FormulaCells } {
  const before: FormulaCells = {};
  const after: FormulaCells = {};
  for (const [row, column] of places(sheet.getCellMatrix().getMatrix())) {
    const formula = reading.formulaAt(row, column);
    if (formula === undefined) continue;
    const renamed = withOtherNames(formula, sheetNames, tableNames);
    if (renamed === formula) continue;
    (before[row] ??= {})[column] = { f: formula };
    (after[row] ??= {})[column] = { f: renamed };
  }
  return { before, after };
}

/** Empties a sheet of ours and fills it with what is ready; place, name and id stay. */
export function fillAnew(engine: Engine, old: Worksheet, ready: SheetToPut): Step[] {
  const ids = sheetIds(old);
  const config = old.getConfig();
  const { made, sheet, styles } = ready;
  const rowCount = Math.max(config.rowCount, made.rowCount);
  const columnCount = Math.max(config.columnCount, made.columnCount);
  return [
    ...removeParts(engine, ids),
    ...mergeSteps(ids, config.mergeData).map(reversed),
    step(
      SetRangeValuesMutation.id,
      { ...ids, cellValue: blanked(config.cellData) },
      { ...ids, cellValue: cellsAsTheyAre(config.cellData) },
    ),
    step(
      SetWorksheetRowCountMutation.id,
      { ...ids, rowCount },
      { ...ids, rowCount: config.rowCount },
    ),
    step(
      SetWorksheetColumnCountMutation.id,
      { ...ids, columnCount },
      { ...ids, columnCount: config.columnCount },
    ),
    step(
      DressCellsMutation.id,
      { ...ids, cells: made.cellData, styles: styles.byId },
      { ...ids, cells: {}, styles: {} },
    ),
    step(
      SetRangeValuesMutation.id,
      { ...ids, cellValue: undressed(made.cellData) },
      { ...ids, cellValue: blanked(made.cellData) },
    ),
    sizeStep(SetWorksheetColWidthMutation.id, "colWidth", ids, columnCount, {
      before: (index) => old.getColumnWidth(index),
      after: (index) => made.columnData[index]?.w ?? defaultColumnWidth,
    }),
    sizeStep(SetWorksheetRowHeightMutation.id, "rowHeight", ids, rowCount, {
      before: (index) => old.getRowHeight(index),
      after: (index) => made.rowData[index]?.h ?? defaultRowHeight,
    }),
    step(
      SetFrozenMutation.id,
      { ...ids, ...frozen(made.freeze) },
      { ...ids, ...frozen(ownFreeze(config)) },
    ),
    ...mergeSteps(ids, made.mergeData),
    ...addParts(sheet, ids),
    step(
      SetRecordMutation.id,
      { ...ids, record: recordOf(sheet, ids.subUnitId) },
      { ...ids, record: sheetRecord(old) },
    ),
  ];
}

const frozen = ({ xSplit, ySplit, startRow, startColumn }: IFreeze): IFreeze => ({
  xSplit,
  ySplit,
  startRow,
  startColumn,
});

const mergeSteps = (ids: SheetIds, ranges: IWorksheetData["mergeData"]): Step[] =>
  ranges.length === 0
    ? []
    : [
        {
          redo: {
            id: AddWorksheetMergeMutation.id,
            params: { ...ids, ranges: structuredClone(ranges) },
          },
          undo: {
            id: RemoveWorksheetMergeMutation.id,
            params: { ...ids, ranges: structuredClone(ranges) },
          },
        },
      ];

/** One step that gives each row or column its size. */
function sizeStep(
  id: string,
  key: "colWidth" | "rowHeight",
  ids: SheetIds,
  count: number,
  size: { readonly before: (index: number) => number; readonly after: (index: number) => number },
): Step {
  const ranges = [{ startRow: 0, startColumn: 0, endRow: count - 1, endColumn: count - 1 }];
  const sizes = (of: (index: number) => number): Record<number, number> =>
    Object.fromEntries(Array.from({ length: count }, (_, index) => [index, of(index)]));
  return step(
    id,
    { ...ids, ranges, [key]: sizes(size.after) },
    { ...ids, ranges, [key]: sizes(size.before) },
  );
}

type Cells = Readonly<Record<number, Readonly<Record<number, ICellData>>>>;

const eachCell = <T>(
  cells: Cells,
  make: (cell: ICellData) => T,
): Record<string, Record<string, T>> =>
  Object.fromEntries(
    Object.entries(cells).map(([row, line]) => [
      row,
      Object.fromEntries(Object.entries(line).map(([column, cell]) => [column, make(cell)])),
    ]),
  );

/** The cells as they are now: the grid changes them in place, even those that it takes out. */
const cellsAsTheyAre = (cells: Cells): object => eachCell(cells, (cell) => ({ ...cell }));

/** The cells without their styles, which are there already. */
const undressed = (cells: Cells): object =>
  eachCell(cells, (cell) => {
    const bare = { ...cell };
    delete bare.s;
    return bare;
  });

/** The same places with nothing in them, style and all. */
const blanked = (cells: Cells): object => eachCell(cells, () => null);
