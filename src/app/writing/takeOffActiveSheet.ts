/** Takes off the sheet that is in front, and writes: what the ribbon does without the pane. */
import type { Workbook, WorkbookFault, WrittenSheet } from "../../workbook/workbook";
import { keepLastWritten, readLastWritten, summaryOf } from "./lastWritten";
import { currencyIn, readSettings } from "../settings";
import { takeOffWorkbook } from "../reading/takeOffWorkbook";
import { writeTakeOff } from "./writeSheets";

export type ActiveSheetOutcome =
  | {
      readonly kind: "written";
      readonly sheets: readonly WrittenSheet[];
      /** Whether nothing was left uncounted. */
      readonly isComplete: boolean;
    }
  /** The sheet holds no opening; nothing was written. */
  | { readonly kind: "no-schedule"; readonly sheet: string }
  | { readonly kind: "refused"; readonly fault: WorkbookFault };

/** On a sheet of ours, the schedule that the settings name or that is found is taken off again. */
export async function takeOffActiveSheet(workbook: Workbook): Promise<ActiveSheetOutcome> {
  const [sheet, sheets, kept] = [
    await workbook.activeSheet(),
    await workbook.sheets(),
    await readSettings(workbook),
  ];
  const isOurs = sheets.some(({ name, mark }) => name === sheet && mark !== null);
  const settings = isOurs ? kept : { ...kept, schedule: { kind: "sheet" as const, sheet } };
  const takeOff = await takeOffWorkbook(workbook, settings);
  if (!takeOff.ok) return { kind: "refused", fault: takeOff.error };
  const { estimate, complete } = takeOff.value;
  if (estimate.jobs.length === 0) return { kind: "no-schedule", sheet };
  const written = await writeTakeOff(workbook, takeOff.value, settings);
  if (!written.ok) return { kind: "refused", fault: written.error };
  // The sheets stand; that the comparison of next time is lost is no fault of this one.
  const before = await readLastWritten(workbook);
  await keepLastWritten(workbook, before, summaryOf(estimate.jobs, currencyIn(settings)));
  return { kind: "written", sheets: written.value, isComplete: complete };
}
