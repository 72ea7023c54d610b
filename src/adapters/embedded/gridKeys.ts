/** Keys of a spreadsheet that the grid leaves out: to the ends, by the page, from sheet to sheet, a new one. */
import { BooleanNumber, type Worksheet } from "@univerjs/core";
import {
  InsertSheetCommand,
  SetWorksheetActiveOperation,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import { isTyping } from "./cellEditor";
import { cellsInView } from "./cellsInView";
import { openGridWorkbook, type Engine } from "./engine";
import { sheetIds } from "./sheetParts";

type Cell = { readonly row: number; readonly column: number };

/** Operation of the grid's drop-downs, whose package tells no name for it. */
const showDropDown = "sheet.operation.show-data-validation-dropdown";

/**
 * Listens in `container` while cells have the keyboard and none is typed into; `select` selects a
 * cell of the sheet in front.
 *
 * Home; Ctrl+Home and Ctrl+End for the first and the last cell; page up and down; the same with Ctrl,
 * or with Ctrl and Alt where the browser keeps Ctrl for itself, from sheet to sheet; Alt+down arrow
 * opens the cell's list; Shift+F11 adds a sheet.
 */
export function listenToGridKeys(
  engine: Engine,
  container: HTMLElement,
  select: (sheet: string, cell: Cell) => void,
): void {
  container.addEventListener(
    "keydown",
    (event) => {
      const isInField = event.target instanceof HTMLInputElement;
      if (isInField || (event.shiftKey && event.key !== "F11") || isTyping(engine)) return;
      const sheet = openGridWorkbook(engine).getActiveSheet(true);
      const at = selected(engine);
      if (!sheet || at === null) return;
      const act = actOf(engine, event, sheet, at, (cell) => select(sheet.getName(), cell));
      if (act === undefined) return;
      event.preventDefault();
      event.stopPropagation();
      act();
    },
    true,
  );
}

function actOf(
  engine: Engine,
  { key, ctrlKey, altKey, metaKey, shiftKey }: KeyboardEvent,
  sheet: Worksheet,
  at: Cell,
  select: (cell: Cell) => void,
): (() => void) | undefined {
  const page = (by: number) => (): void => {
    const row = Math.max(0, Math.min(sheet.getRowCount() - 1, at.row + by * pageOf(engine)));
    select({ row, column: at.column });
  };
  const ctrl = ctrlKey || metaKey;
  const plain: Readonly<Record<string, () => void>> = {
    Home: () => select({ row: at.row, column: 0 }),
    PageUp: page(-1),
    PageDown: page(1),
  };
  const withCtrl: Readonly<Record<string, () => void>> = {
    Home: () => select({ row: 0, column: 0 }),
    End: () => select(lastCell(sheet)),
    PageUp: () => showSheet(engine, -1),
    PageDown: () => showSheet(engine, 1),
  };
  if (shiftKey) return ctrl || altKey ? undefined : () => addSheet(engine);
  if (ctrl && (!altKey || key.startsWith("Page"))) return withCtrl[key];
  if (altKey && !ctrl && key === "ArrowDown") return () => openList(engine, sheet, at);
  return altKey || ctrl ? undefined : plain[key];
}

function selected({ injector }: Engine): Cell | null {
  const primary = injector.get(SheetsSelectionsService).getCurrentLastSelection()?.primary;
  return primary ? { row: primary.actualRow, column: primary.actualColumn } : null;
}

const lastCell = (sheet: Worksheet): Cell => ({
  row: Math.max(0, sheet.getLastRowWithContent()),
  column: Math.max(0, sheet.getLastColumnWithContent()),
});

/** How many rows are in sight below the frozen ones. */
function pageOf(engine: Engine): number {
  const rows = cellsInView(engine);
  return rows === null ? 1 : Math.max(1, rows.endRow - rows.startRow - 1);
}

/** The next sheet that is not hidden, `by` sheets on; nothing where there is none. */
function showSheet(engine: Engine, by: number): void {
  const book = openGridWorkbook(engine);
  const shown = book.getSheets().filter((each) => each.isSheetHidden() === BooleanNumber.FALSE);
  const active = book.getActiveSheet(true);
  const next = shown[shown.findIndex((each) => each === active) + by];
  if (next !== undefined) {
    engine.commands.syncExecuteCommand(SetWorksheetActiveOperation.id, sheetIds(next));
  }
}

function addSheet({ commands }: Engine): void {
  void commands.executeCommand(InsertSheetCommand.id);
}

function openList({ commands }: Engine, sheet: Worksheet, { row, column }: Cell): void {
  const { unitId, subUnitId } = sheetIds(sheet);
  commands.syncExecuteCommand(showDropDown, { unitId, subUnitId, row, column });
}
