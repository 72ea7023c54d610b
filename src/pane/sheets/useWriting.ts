/** Writing the hardware sheets: drawn in turns, then written as one act. */
import { keepLastWritten, readLastWritten, summaryOf } from "../../app/lastWritten";
import { changesSince } from "../../app/changesSince";
import { currencyIn } from "../../app/settings";
import type { WorkbookTakeOff } from "../../app/takeOffWorkbook";
import { drawTakeOff, writeDrawings, type IsIn } from "../../app/writeSheets";
import { err, ok, type Result } from "../../core/base/result";
import { cancelled } from "../../workbook/faults";
import type {
  SheetSummary,
  WorkbookFault,
  WriteOptions,
  WrittenSheet,
} from "../../workbook/workbook";
import { usePane } from "../state/paneContext";
import { runSteps } from "../state/runSteps";
import { useWritingAct, type WritingActHandle, type Written } from "./useWritingAct";

export type WritingHandle = Pick<WritingActHandle, "writing" | "cancel"> & {
  readonly write: (takeOff: WorkbookTakeOff, isIn: IsIn) => void;
};

/** How much of the way is done once the sheets are drawn. */
const whenDrawn = 0.3;

export function useWriting(): WritingHandle {
  const { workbook, state } = usePane();
  const { settings } = state;
  const { writing, begin, cancel } = useWritingAct();

  const act = async (
    takeOff: WorkbookTakeOff,
    isIn: IsIn,
    { signal, onProgress }: Required<WriteOptions>,
  ): Promise<Result<Written, WorkbookFault>> => {
    const drawings = await runSteps(drawTakeOff(takeOff, settings, isIn), {
      signal,
      onProgress: (done) => onProgress(done * whenDrawn),
    });
    if (drawings === null) return err(cancelled);
    const before = await readLastWritten(workbook);
    const sheets = await writeDrawings(workbook, takeOff, drawings, {
      signal,
      onProgress: (done) => onProgress(whenDrawn + done * (1 - whenDrawn)),
    });
    if (!sheets.ok) return sheets;
    const currency = currencyIn(settings);
    const now = summaryOf(takeOff.estimate.jobs.filter(isIn), currency);
    // The sheets stand; that the comparison of next time is lost is no fault of this one.
    await keepLastWritten(workbook, before, now);
    const older = olderSheets(await workbook.sheets(), sheets.value);
    return ok({ sheets: sheets.value, changes: changesSince(before, now, currency), older });
  };
  return {
    writing,
    write: (takeOff, isIn) => begin((options) => act(takeOff, isIn, options)),
    cancel,
  };
}

const olderSheets = (
  standing: readonly SheetSummary[],
  written: readonly WrittenSheet[],
): readonly string[] => {
  const names = new Set(written.map(({ name }) => name));
  return standing
    .filter(({ mark, name }) => mark?.kind === "hardware" && !names.has(name))
    .map(({ name }) => name);
};
