/**
 * Writes drawings into the grid as one act. What is to be written is made first; then all changes
 * are carried out in one go, without a pause in which a person could type.
 *
 * A sheet of ours is filled anew where it stands, so the view of it does not jump. Where a person
 * typed into it, the old sheet moves aside whole under another name and a new one takes its place.
 */
import {
  generateRandomId,
  type IFreeze,
  type IWorksheetData,
  type Workbook as GridWorkbook,
  type Worksheet,
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
import { ok, type Result } from "../../core/base/result";
import type { Drawing } from "../../workbook/drawing";
import { drawnSheet, styleTable } from "../../workbook/drawnSheet";
import { fingerprint } from "../../workbook/fingerprint";
import { planWriting, type StandingSheet } from "../../workbook/plan";
import type { SheetSnapshot } from "../../workbook/snapshot";
import { freeTableName } from "../../workbook/tableNames";
import type { WorkbookFault, WrittenSheet } from "../../workbook/workbook";
import type { Engine } from "./engine";
import {
  defaultColumnWidth,
  defaultRowHeight,
  gridSheet,
  recordOf,
  type GridSheet,
} from "./gridSheet";
import { isSheetProtected, isStructureProtected } from "./protection";
import { SetRecordMutation, sheetRecord } from "./records";
import {
  addParts,
  removeParts,
  renameTable,
  sheetIds,
  tablesOf,
  type SheetIds,
} from "./sheetParts";
import { readSheet } from "./sheetReading";
import { reversed, step, type Step } from "./steps";

/** A drawing made ready: the sheet it asks for, in our words and in the grid's. */
export type ReadySheet = {
  readonly drawing: Drawing;
  readonly sheet: SheetSnapshot;
  readonly made: GridSheet;
};

/** Makes a drawing ready, with no look at the workbook. */
export function makeReady(drawing: Drawing): ReadySheet {
  const styles = styleTable();
  const sheet = drawnSheet(drawing, drawing.name, styles);
  return { drawing, sheet, made: gridSheet(sheet, generateRandomId(8), styles.styles) };
}

/** What is to be done to the workbook, and what will be there then. */
export type WriteSteps = {
  readonly steps: readonly Step[];
  readonly written: readonly WrittenSheet[];
};

/** What has to be done to the workbook as it is now, to have `ready` in it. */
export function writeSteps(
  engine: Engine,
  book: GridWorkbook,
  ready: readonly ReadySheet[],
): Result<WriteSteps, WorkbookFault> {
  const standing = book.getSheets().map((sheet) => standingSheet(engine, book, sheet));
  const plan = planWriting(
    ready.map(({ drawing }) => drawing),
    standing,
    isStructureProtected(engine, book),
  );
  if (!plan.ok) return plan;
  const replaced = plan.value.flatMap(({ name, was }) =>
    was === "replaced" ? [sheetNamed(book, name)] : [],
  );
  const tableNames = book
    .getSheets()
    .filter((sheet) => !replaced.includes(sheet))
    .flatMap((sheet) => tablesOf(engine, sheetIds(sheet)).map(({ name }) => name));
  const order = book.getSheets().map((sheet) => sheet.getName());
  const steps = plan.value.flatMap((planned, index): Step[] => {
    const made = ready[index];
    if (made === undefined) return [];
    const next = withName(withFreeTableNames(made, tableNames), planned.name);
    if (planned.was === "new") return insertSheet(book, next, order.push(planned.name) - 1);
    const old = sheetNamed(book, planned.name);
    if (planned.keptAs === null) return fillAnew(engine, old, next);
    const place = order.indexOf(planned.name);
    order.splice(place + 1, 0, planned.keptAs);
    return [
      ...setAside(engine, old, planned.keptAs, tableNames),
      ...insertSheet(book, next, place),
    ];
  });
  const written = plan.value.map(({ drawing, ...rest }): WrittenSheet => ({
    ...rest,
    mark: drawing.mark,
  }));
  return ok({ steps, written });
}

function standingSheet(engine: Engine, book: GridWorkbook, sheet: Worksheet): StandingSheet {
  const record = sheetRecord(sheet);
  const mark = record?.mark ?? null;
  return {
    name: sheet.getName(),
    mark,
    isProtected: isSheetProtected(engine, sheetIds(sheet)),
    isTouched:
      mark !== null && fingerprint(readSheet(engine, book, sheet).typedCells()) !== record?.written,
  };
}

/** @throws RangeError when it is not there; a plan names only sheets that are. */
function sheetNamed(book: GridWorkbook, name: string): Worksheet {
  const sheet = book.getSheetBySheetName(name);
  if (!sheet) throw new RangeError(`No such sheet: ${name}`);
  return sheet;
}

const withName = (ready: ReadySheet, name: string): ReadySheet => ({
  ...ready,
  made: { ...ready.made, name },
});

/** Each name it takes is added to `taken`. */
function withFreeTableNames(ready: ReadySheet, taken: string[]): ReadySheet {
  const tables = ready.sheet.tables.map((table) => {
    const name = freeTableName(table.name, taken);
    taken.push(name);
    return { ...table, name };
  });
  return { ...ready, sheet: { ...ready.sheet, tables } };
}

function insertSheet(book: GridWorkbook, { made, sheet }: ReadySheet, index: number): Step[] {
  const ids = { unitId: book.getUnitId(), subUnitId: made.id };
  return [
    {
      redo: { id: InsertSheetMutation.id, params: { unitId: ids.unitId, index, sheet: made } },
      undo: { id: RemoveSheetMutation.id, params: { ...ids, subUnitName: made.name } },
    },
    ...addParts(sheet, ids),
  ];
}

/** Gives the sheet and its tables other names; it is the person's from then on. */
function setAside(engine: Engine, old: Worksheet, keptAs: string, tableNames: string[]): Step[] {
  const ids = sheetIds(old);
  const record = sheetRecord(old);
  return [
    step(SetWorksheetNameMutation.id, { ...ids, name: keptAs }, { ...ids, name: old.getName() }),
    step(
      SetRecordMutation.id,
      { ...ids, record: record && { ...record, mark: null, written: null } },
      { ...ids, record },
    ),
    ...tablesOf(engine, ids).map((table) => {
      const name = freeTableName(table.name, tableNames);
      tableNames.push(name);
      return renameTable(ids, table, name);
    }),
  ];
}

/** Empties a sheet of ours and fills it with what is ready; place, name and id stay. */
function fillAnew(engine: Engine, old: Worksheet, ready: ReadySheet): Step[] {
  const ids = sheetIds(old);
  const config = old.getConfig();
  const { made, sheet } = ready;
  const rowCount = Math.max(config.rowCount, made.rowCount);
  const columnCount = Math.max(config.columnCount, made.columnCount);
  return [
    ...removeParts(engine, ids),
    ...mergeSteps(ids, config.mergeData).map(reversed),
    step(
      SetRangeValuesMutation.id,
      { ...ids, cellValue: blanked(config.cellData) },
      { ...ids, cellValue: structuredClone(config.cellData) },
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
      SetRangeValuesMutation.id,
      { ...ids, cellValue: made.cellData },
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
      { ...ids, ...frozen(config.freeze) },
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

/** The same places with nothing in them, style and all. */
const blanked = (
  cells: Readonly<Record<number, Readonly<Record<number, unknown>>>>,
): Record<string, Record<string, null>> =>
  Object.fromEntries(
    Object.entries(cells).map(([row, line]) => [
      row,
      Object.fromEntries(Object.keys(line).map((column) => [column, null])),
    ]),
  );
