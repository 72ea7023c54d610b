/** Why the selected cell shows an error, while one of our functions has made it. */
import { SheetsSelectionsService } from "@univerjs/sheets";
import { cellName } from "../../core/base/cell";
import { openGridWorkbook, type Engine } from "./engine";
import type { FunctionFaults, GridCell } from "./functionFaults";
import { recalculate } from "./recalculating";
import { watchGrid } from "./watching";

/** Such as `B5 shows #VALUE!: The argument width is wrong: it is blank.` */
export type OnReason = (words: string | null) => void;

/**
 * Tells `onReason` whenever it changes, until the function it returns is called. `null` where the
 * selected cell shows no error, or one that no function of ours made.
 */
export function watchErrorReasons(
  engine: Engine,
  faults: FunctionFaults,
  onReason: OnReason,
): () => void {
  let told: string | null = null;
  let askedAgain = "";
  return watchGrid(engine, () => {
    const selected = selectedError(engine);
    const reason = selected === null ? null : faults.reason(selected.cell, selected.shown);
    // After rows were moved nobody knows any more: the cell itself is asked, once.
    if (selected !== null && reason === null && askedAgain !== selected.formula) {
      askedAgain = selected.formula;
      const { unitId, sheetId, row, column } = selected.cell;
      const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
      recalculate(engine.commands, [{ unitId, sheetId, range }]);
    }
    if (selected === null) askedAgain = "";
    const words =
      selected === null || reason === null
        ? null
        : `${cellName(selected.cell)} shows ${selected.shown} ${reason}`;
    if (words === told) return;
    told = words;
    onReason(words);
  });
}

type SelectedError = {
  readonly cell: GridCell;
  readonly shown: string;
  readonly formula: string;
};

/** The cell at which a person types, where it holds a formula that shows an error. */
function selectedError(engine: Engine): SelectedError | null {
  const sheet = openGridWorkbook(engine).getActiveSheet(true);
  const primary = engine.injector.get(SheetsSelectionsService).getCurrentLastSelection()?.primary;
  if (!sheet || !primary) return null;
  const { actualRow: row, actualColumn: column } = primary;
  const cell = sheet.getCellRaw(row, column);
  const shown = cell?.v;
  if (typeof shown !== "string" || !shown.startsWith("#")) return null;
  const formula = cell?.f ?? cell?.si ?? "";
  if (formula === "") return null;
  const place = { unitId: sheet.getUnitId(), sheetId: sheet.getSheetId(), row, column };
  return { cell: place, shown, formula };
}
