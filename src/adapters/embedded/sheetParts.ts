/**
 * What belongs to a sheet but stands beside its cells in the grid: tables, notes, drop-downs.
 * Adding and taking away, each as steps that can be undone.
 */
import {
  DataValidationErrorStyle,
  DataValidationRenderMode,
  DataValidationType,
  generateRandomId,
  type IDataValidationRule,
  type ISheetDataValidationRule,
  type Worksheet,
} from "@univerjs/core";
import {
  AddDataValidationMutation,
  DataValidationModel,
  RemoveDataValidationMutation,
} from "@univerjs/data-validation";
import { deserializeListOptions, serializeListOptions } from "@univerjs/sheets";
import {
  RemoveNoteMutation,
  SheetsNoteModel,
  UpdateNoteMutation,
  type ISheetNote,
} from "@univerjs/sheets-note";
import {
  AddSheetTableMutation,
  DeleteSheetTableMutation,
  SetSheetTableMutation,
  TableManager,
  type ITableJson,
} from "@univerjs/sheets-table";
import type { Choice, DrawnTable } from "../../workbook/drawing";
import type { SheetSnapshot } from "../../workbook/snapshot";
import type { Engine } from "./engine";
import { reversed, step, type Step } from "./steps";

/** A sheet of the grid by its ids. */
export type SheetIds = { readonly unitId: string; readonly subUnitId: string };

export const sheetIds = (sheet: Worksheet): SheetIds => ({
  unitId: sheet.getUnitId(),
  subUnitId: sheet.getSheetId(),
});

/** Adds the tables, notes and drop-downs of `sheet`. Its cells must be there by then. */
export const addParts = (sheet: SheetSnapshot, ids: SheetIds): Step[] => [
  ...sheet.tables.map((table) => addTable(ids, tableJson(table))),
  ...notesOf(sheet).map((note) => addNote(ids, note)),
  ...sheet.choices.map((choice) => addRule(ids, choiceRule(choice))),
];

/** Takes away all tables, notes and rules that the grid's sheet has. */
export function removeParts(engine: Engine, ids: SheetIds): Step[] {
  const { injector } = engine;
  return [
    ...tablesOf(engine, ids).map((table) => reversed(addTable(ids, table))),
    ...gridNotes(engine, ids).map((note) => reversed(addNote(ids, note))),
    ...injector
      .get(DataValidationModel)
      .getRules(ids.unitId, ids.subUnitId)
      .map((rule) => reversed(addRule(ids, rule))),
  ];
}

export const tablesOf = ({ injector }: Engine, { unitId, subUnitId }: SheetIds): ITableJson[] =>
  injector
    .get(TableManager)
    .getTablesBySubunitId(unitId, subUnitId)
    .map((table) => table.toJSON());

export const gridNotes = ({ injector }: Engine, { unitId, subUnitId }: SheetIds): ISheetNote[] => [
  ...(injector.get(SheetsNoteModel).getSheetNotes(unitId, subUnitId)?.values() ?? []),
];

/** The grid's table in our words. */
export const drawnTable = ({ name, range }: ITableJson): DrawnTable => ({
  name,
  headingRow: range.startRow,
  lastRow: range.endRow,
  firstColumn: range.startColumn,
  lastColumn: range.endColumn,
});

/** The drop-downs of a sheet; rules of other kinds are not ours to tell of. */
export const choicesOf = ({ injector }: Engine, { unitId, subUnitId }: SheetIds): Choice[] =>
  injector
    .get(DataValidationModel)
    .getRules(unitId, subUnitId)
    .flatMap((rule) => choicesOfRule(rule));

export const renameTable = (ids: SheetIds, table: ITableJson, name: string): Step =>
  step(
    SetSheetTableMutation.id,
    { ...ids, tableId: table.id, config: { name } },
    { ...ids, tableId: table.id, config: { name: table.name } },
  );

const tableJson = (table: DrawnTable): Pick<ITableJson, "id" | "name" | "range"> => ({
  id: generateRandomId(8),
  name: table.name,
  range: {
    startRow: table.headingRow,
    startColumn: table.firstColumn,
    endRow: table.lastRow,
    endColumn: table.lastColumn,
  },
});

const addTable = (
  ids: SheetIds,
  table: Pick<ITableJson, "id" | "name" | "range"> & Partial<ITableJson>,
): Step => ({
  redo: {
    id: AddSheetTableMutation.id,
    params: {
      ...ids,
      tableId: table.id,
      name: table.name,
      range: table.range,
      options: { ...table.options, ...(table.columns ? { columns: table.columns } : {}) },
    },
  },
  undo: { id: DeleteSheetTableMutation.id, params: { ...ids, tableId: table.id } },
});

const addNote = ({ unitId, subUnitId }: SheetIds, note: ISheetNote): Step => {
  const place = { unitId, sheetId: subUnitId, row: note.row, col: note.col };
  return {
    redo: { id: UpdateNoteMutation.id, params: { ...place, note, silent: true } },
    undo: { id: RemoveNoteMutation.id, params: { ...place, noteId: note.id, silent: true } },
  };
};

const addRule = (ids: SheetIds, rule: IDataValidationRule): Step => ({
  redo: { id: AddDataValidationMutation.id, params: { ...ids, rule, source: "command" } },
  undo: {
    id: RemoveDataValidationMutation.id,
    params: { ...ids, ruleId: rule.uid, source: "command" },
  },
});

function notesOf(sheet: SheetSnapshot): ISheetNote[] {
  return sheet.rows.flatMap((cells, row) =>
    cells.flatMap((cell, col) =>
      cell?.note === undefined
        ? []
        : [{ id: generateRandomId(8), row, col, note: cell.note, ...noteSize(cell.note) }],
    ),
  );
}

/** Room for the text at about 30 characters a line, within reason. */
const noteSize = (text: string): { readonly width: number; readonly height: number } => {
  const lines = text.split("\n").reduce((sum, part) => sum + Math.ceil((part.length + 1) / 30), 0);
  return { width: 220, height: Math.min(320, 28 + lines * 18) };
};

const choiceRule = ({
  column,
  firstRow,
  lastRow,
  list,
  othersToo,
}: Choice): IDataValidationRule => ({
  uid: generateRandomId(8),
  type: DataValidationType.LIST,
  ranges: [{ startRow: firstRow, endRow: lastRow, startColumn: column, endColumn: column }],
  formula1: serializeListOptions([...list]),
  allowBlank: true,
  renderMode: DataValidationRenderMode.ARROW,
  showErrorMessage: !othersToo,
  errorStyle: othersToo ? DataValidationErrorStyle.WARNING : DataValidationErrorStyle.STOP,
  error: othersToo ? "" : "Choose one from the list.",
});

function choicesOfRule(rule: ISheetDataValidationRule): Choice[] {
  const { formula1 } = rule;
  const isList = rule.type === "list" && formula1 !== undefined && !formula1.startsWith("=");
  if (!isList) return [];
  return rule.ranges.flatMap((range) =>
    Array.from({ length: range.endColumn - range.startColumn + 1 }, (_, across) => ({
      column: range.startColumn + across,
      firstRow: range.startRow,
      lastRow: range.endRow,
      list: deserializeListOptions(formula1),
      othersToo: rule.errorStyle !== DataValidationErrorStyle.STOP,
    })),
  );
}
