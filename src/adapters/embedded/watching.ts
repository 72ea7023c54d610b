/** Tells what changes in the grid: the grid's own changes by id, gathered over a moment. */
import { CommandType, type ICommandInfo } from "@univerjs/core";
import {
  SetArrayFormulaDataMutation,
  SetFormulaCalculationResultMutation,
} from "@univerjs/engine-formula";
import {
  DeleteWorksheetProtectionMutation,
  InsertColMutation,
  InsertRowMutation,
  InsertSheetMutation,
  MoveColsMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
  RemoveSheetMutation,
  ReorderRangeMutation,
  SetRangeValuesMutation,
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
  SetWorksheetHideMutation,
  SetWorksheetNameMutation,
  SetWorksheetOrderMutation,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import {
  AddSheetTableMutation,
  DeleteSheetTableMutation,
  SetSheetTableMutation,
} from "@univerjs/sheets-table";
import type { Selection, WorkbookChange } from "../../workbook/workbook";
import { openGridWorkbook, type Engine } from "./engine";
import { SetRecordMutation } from "./records";

const cellMoves = [
  InsertRowMutation.id,
  InsertColMutation.id,
  RemoveRowMutation.id,
  RemoveColMutation.id,
  MoveRowsMutation.id,
  MoveColsMutation.id,
  ReorderRangeMutation.id,
];

const cellChanges: ReadonlySet<string> = new Set([SetRangeValuesMutation.id, ...cellMoves]);

/** Whether the change of this id takes cells with their formulas to another place. */
export const movesCells = (id: string): boolean =>
  cellMoves.includes(id) || id === MoveRangeMutation.id;

const sheetChanges: ReadonlySet<string> = new Set([
  InsertSheetMutation.id,
  RemoveSheetMutation.id,
  SetWorksheetNameMutation.id,
  SetWorksheetOrderMutation.id,
  SetWorksheetHideMutation.id,
  DeleteWorksheetProtectionMutation.id,
  AddSheetTableMutation.id,
  DeleteSheetTableMutation.id,
  SetSheetTableMutation.id,
  SetRecordMutation.id,
]);

const selectionChanges: ReadonlySet<string> = new Set([
  SetSelectionsOperation.id,
  SetWorksheetActiveOperation.id,
]);

/**
 * Calls `onChange` for what changes in the open workbook until the function it returns is called.
 * Changes are told after the code that made them has run, each once; the sheets first.
 */
export function watchGrid(engine: Engine, onChange: (change: WorkbookChange) => void): () => void {
  const touched = new Set<string>();
  let sheets = false;
  let moved = false;
  let stopped = false;
  let timer: ReturnType<typeof setTimeout> | null = null;

  const tell = (): void => {
    timer = null;
    if (stopped) return;
    const book = openGridWorkbook(engine);
    const names = [...touched].flatMap((id) => book.getSheetBySheetId(id)?.getName() ?? []);
    const selection = moved ? selectedCells(engine) : null;
    const changes: WorkbookChange[] = [
      ...(sheets ? [{ kind: "sheets" } as const] : []),
      ...names.map((sheet) => ({ kind: "cells", sheet }) as const),
      ...(selection === null ? [] : [{ kind: "selection", selection } as const]),
    ];
    touched.clear();
    sheets = false;
    moved = false;
    for (const change of changes) onChange(change);
  };

  const listener = engine.commands.onCommandExecuted((command) => {
    const changed = changedSheets(command);
    for (const id of changed) touched.add(id);
    const isSheets = sheetChanges.has(command.id);
    const isMove = selectionChanges.has(command.id);
    if (changed.length === 0 && !isSheets && !isMove) return;
    sheets ||= isSheets;
    moved ||= isMove;
    timer ??= setTimeout(tell, 0);
  });
  return () => {
    stopped = true;
    if (timer !== null) clearTimeout(timer);
    listener.dispose();
  };
}

/** The grid's ids of the sheets whose cells a change altered. */
function changedSheets({ id, params }: ICommandInfo): readonly string[] {
  if (cellChanges.has(id)) {
    const { subUnitId } = params as { readonly subUnitId?: string };
    return subUnitId === undefined ? [] : [subUnitId];
  }
  if (id === MoveRangeMutation.id) {
    const { from, to } = params as Record<"from" | "to", { readonly subUnitId: string }>;
    return [from.subUnitId, to.subUnitId];
  }
  if (id === InsertSheetMutation.id) {
    const { sheet } = params as { readonly sheet: { readonly id: string } };
    return [sheet.id];
  }
  if (id === SetArrayFormulaDataMutation.id) {
    const { arrayFormulaCellData } = params as {
      readonly arrayFormulaCellData: Readonly<Record<string, object | undefined>>;
    };
    return Object.values(arrayFormulaCellData).flatMap((sheets) => Object.keys(sheets ?? {}));
  }
  return [];
}

/** The grid's cell editor is a document of its own, and changes as the selection moves. */
function isOfEditor(engine: Engine, params: object | undefined): boolean {
  const { unitId } = (params ?? {}) as { readonly unitId?: unknown };
  return typeof unitId === "string" && unitId !== openGridWorkbook(engine).getUnitId();
}

/** The cells that are selected on the active sheet, or `null` before any are. */
export function selectedCells(engine: Engine): Selection | null {
  const book = openGridWorkbook(engine);
  const sheet = book.getActiveSheet(true);
  const range = engine.injector.get(SheetsSelectionsService).getCurrentLastSelection()?.range;
  if (!sheet || !range) return null;
  // Whole rows and columns have no number at their open end.
  const row = Number.isNaN(range.startRow) ? 0 : range.startRow;
  const column = Number.isNaN(range.startColumn) ? 0 : range.startColumn;
  const lastRow = Number.isNaN(range.endRow) ? sheet.getRowCount() - 1 : range.endRow;
  const lastColumn = Number.isNaN(range.endColumn) ? sheet.getColumnCount() - 1 : range.endColumn;
  return {
    sheet: sheet.getName(),
    row,
    column,
    rows: lastRow - row + 1,
    columns: lastColumn - column + 1,
  };
}

/**
 * Calls `onChange` at once for every change to the open workbook, looks and widths included.
 * `typed` is false for results that the grid worked out by itself.
 */
export function watchEverything(engine: Engine, onChange: (typed: boolean) => void): () => void {
  const listener = engine.commands.onCommandExecuted(({ type, id, params }, options) => {
    if (type !== CommandType.MUTATION || isOfEditor(engine, params)) return;
    const isOwnWork = options?.onlyLocal === true || id.startsWith("formula.mutation.");
    if (!isOwnWork) onChange(true);
    else if (id === SetFormulaCalculationResultMutation.id) onChange(false);
  });
  return () => listener.dispose();
}
