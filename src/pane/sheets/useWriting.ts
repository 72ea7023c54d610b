/** Writing the chosen sheets: drawn in turns, then written as one act. */
import { keepLastWritten, readLastWritten, summaryOf } from "../../app/writing/lastWritten";
import { changesSince } from "../../app/writing/changesSince";
import { packingKinds } from "../../app/writing/packingLists";
import { currencyIn } from "../../app/settings";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { drawChosen, writeChosen, type ChosenSheets } from "../../app/writing/chosenSheets";
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
  readonly write: (takeOff: WorkbookTakeOff, chosen: ChosenSheets) => void;
};

/** How much of the way is done once the sheets are drawn. */
const whenDrawn = 0.3;

export function useWriting(): WritingHandle {
  const { workbook, state } = usePane();
  const { settings } = state;
  const { writing, begin, cancel } = useWritingAct();

  const act = async (
    takeOff: WorkbookTakeOff,
    chosen: ChosenSheets,
    { signal, onProgress }: Required<WriteOptions>,
  ): Promise<Result<Written, WorkbookFault>> => {
    const drawings = await runSteps(drawChosen(takeOff, settings, chosen), {
      signal,
      onProgress: (done) => onProgress(done * whenDrawn),
    });
    if (drawings === null) return err(cancelled);
    const before = await readLastWritten(workbook);
    const sheets = await writeChosen(workbook, takeOff, chosen, drawings, {
      signal,
      onProgress: (done) => onProgress(whenDrawn + done * (1 - whenDrawn)),
    });
    if (!sheets.ok) return sheets;
    const currency = currencyIn(settings);
    const older = olderSheets(await workbook.sheets(), sheets.value);
    if (!chosen.hardware) return ok({ sheets: sheets.value, changes: "", older });
    const now = summaryOf(takeOff.estimate.jobs.filter(chosen.isIn), currency);
    // The sheets stand; that the comparison of next time is lost is no fault of this one.
    await keepLastWritten(workbook, before, now);
    return ok({ sheets: sheets.value, changes: changesSince(before, now, currency), older });
  };
  return {
    writing,
    write: (takeOff, chosen) => begin((options) => act(takeOff, chosen, options)),
    cancel,
  };
}

/** Kinds of which there may be one sheet for each job and one for all. */
const kindsByJob: readonly string[] = ["hardware", ...packingKinds];

/** Sheets of a kind that was written now, from before. */
const olderSheets = (
  standing: readonly SheetSummary[],
  written: readonly WrittenSheet[],
): readonly string[] => {
  const names = new Set(written.map(({ name }) => name));
  const kinds = new Set(written.map(({ mark }) => mark?.kind));
  return standing
    .filter(({ mark, name }) => {
      const kind = mark?.kind ?? "";
      return kindsByJob.includes(kind) && kinds.has(kind) && !names.has(name);
    })
    .map(({ name }) => name);
};
