/**
 * Tells what changes in the workbook. Excel names sheets by id in its events, and one action can
 * bring hundreds of them; so they are gathered for a moment and told once for each sheet.
 */
import { columnIndex } from "../../core/base/cell";
import type { Selection, WorkbookChange } from "../../workbook/workbook";
import { faultOf, isExcelError } from "./excelFaults";
import { hasExcelApi, inExcel, orThrow } from "./inExcel";
import { isAsideName } from "./journal";
import { selection } from "./places";

type Heard = {
  readonly cells: Set<string>;
  sheets: boolean;
  selection: { readonly sheet: string; readonly address: string } | null;
  /** A sheet came to the front; where the selection is on it must be asked. */
  activated: boolean;
};

const nothingHeard = (): Heard => ({
  cells: new Set(),
  sheets: false,
  selection: null,
  activated: false,
});

/** How long events are gathered, and how long to wait when Excel is busy; milliseconds. */
const moment = 5;
const later = 500;

/** Calls `onChange` until the function that it returns is called. */
export async function watch(
  onChange: (change: WorkbookChange) => void,
): Promise<() => Promise<void>> {
  let heard = nothingHeard();
  let names: ReadonlyMap<string, string> = new Map();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isOver = false;

  const hear = (note: (heard: Heard) => void): Promise<void> => {
    if (isOver) return Promise.resolve();
    note(heard);
    timer ??= setTimeout(() => void tell(), moment);
    return Promise.resolve();
  };

  const tell = async (): Promise<void> => {
    timer = undefined;
    const told = heard;
    heard = nothingHeard();
    const asked = await inExcel((context) => lookAround(context, told.activated));
    if (isOver) return;
    if (!asked.ok) {
      // Excel is busy: keep what was heard and ask again.
      heard = together(told, heard);
      timer ??= setTimeout(() => void tell(), later);
      return;
    }
    const { sheets, selected } = asked.value;
    const isChanged = told.sheets || !sameNames(names, sheets);
    names = sheets;
    if (isChanged) onChange({ kind: "sheets" });
    for (const id of told.cells) {
      const sheet = sheets.get(id);
      if (sheet !== undefined) onChange({ kind: "cells", sheet });
    }
    const sheet = told.selection === null ? undefined : sheets.get(told.selection.sheet);
    const moved =
      selected ??
      (told.selection === null || sheet === undefined
        ? null
        : selectionAt(sheet, told.selection.address));
    if (moved !== null) onChange({ kind: "selection", selection: moved });
  };

  const started = await inExcel(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/id,items/name");
    const anySheet = (): Promise<void> => hear((each) => (each.sheets = true));
    const handlers: OfficeExtension.EventHandlerResult<unknown>[] = [
      worksheets.onChanged.add(({ worksheetId }) => hear((each) => each.cells.add(worksheetId))),
      worksheets.onSelectionChanged.add(({ worksheetId, address }) =>
        hear((each) => (each.selection = { sheet: worksheetId, address })),
      ),
      worksheets.onActivated.add(() => hear((each) => (each.activated = true))),
      worksheets.onAdded.add(anySheet),
      worksheets.onDeleted.add(anySheet),
    ];
    // Without it a new name is noticed at the next change.
    if (hasExcelApi("1.17")) handlers.push(worksheets.onNameChanged.add(anySheet));
    await context.sync();
    names = seen(worksheets);
    return handlers;
  });
  const handlers = orThrow(started);

  return async () => {
    isOver = true;
    clearTimeout(timer);
    const [first] = handlers;
    if (first === undefined) return;
    try {
      const run = { previousObjects: first.context, delayForCellEdit: true };
      await Excel.run(run, async (context) => {
        for (const handler of handlers) handler.remove();
        await context.sync();
      });
    } catch (error) {
      // A workbook that is closed, or Excel that is gone, tells nothing more anyway.
      faultOf(error);
    }
  };
}

const seen = ({ items }: Excel.WorksheetCollection): ReadonlyMap<string, string> =>
  new Map(items.filter(({ name }) => !isAsideName(name)).map(({ id, name }) => [id, name]));

/** The sheets by id as they are called now, and the selection where a sheet came to the front. */
async function lookAround(
  context: Excel.RequestContext,
  isActivated: boolean,
): Promise<{ readonly sheets: ReadonlyMap<string, string>; readonly selected: Selection | null }> {
  const worksheets = context.workbook.worksheets.load("items/id,items/name");
  await context.sync();
  return {
    sheets: seen(worksheets),
    selected: isActivated ? await selectionIfTold(context) : null,
  };
}

/** What else was heard must not wait until Excel can say what is selected. */
async function selectionIfTold(context: Excel.RequestContext): Promise<Selection | null> {
  try {
    return await selection(context);
  } catch (error) {
    if (isExcelError(error)) return null;
    throw error;
  }
}

const together = (one: Heard, other: Heard): Heard => ({
  cells: new Set([...one.cells, ...other.cells]),
  sheets: one.sheets || other.sheets,
  selection: other.selection ?? one.selection,
  activated: one.activated || other.activated,
});

const sameNames = (one: ReadonlyMap<string, string>, other: ReadonlyMap<string, string>): boolean =>
  one.size === other.size && [...one].every(([id, name]) => other.get(id) === name);

/** `B2:D4`, `B2`, or the first of `B2:D4,F9`; whole rows and columns start at their first cell. */
function selectionAt(sheet: string, address: string): Selection | null {
  const [first = ""] = address.replaceAll("$", "").split(",");
  const [from = "", to = from] = first.replace(/^.*!/, "").split(":");
  const [start, end] = [cornerAt(from), cornerAt(to)];
  if (start === null || end === null) return null;
  const row = start.row ?? 0;
  const column = start.column ?? 0;
  return {
    sheet,
    row,
    column,
    rows: (end.row ?? lastRow) - row + 1,
    columns: (end.column ?? lastColumn) - column + 1,
  };
}

const lastRow = 1_048_575;
const lastColumn = 16_383;

function cornerAt(
  text: string,
): { readonly row: number | null; readonly column: number | null } | null {
  const [whole, letters = "", digits = ""] = /^([A-Za-z]{0,3})(\d{0,7})$/.exec(text) ?? [];
  if (whole === undefined || whole === "") return null;
  return {
    row: digits === "" ? null : Number(digits) - 1,
    column: letters === "" ? null : columnIndex(letters),
  };
}
