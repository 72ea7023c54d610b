/**
 * What we keep inside the grid's workbook: each sheet's mark and print setup, and our settings.
 *
 * They stand in the model's own place for foreign data, so they go wherever the workbook goes. A
 * person who copies a sheet copies its record too; a record names its sheet, so a copy is not ours.
 */
import {
  CommandType,
  IUniverInstanceService,
  type IMutation,
  type Workbook as GridWorkbook,
  type Worksheet,
} from "@univerjs/core";
import type { DrawnPicture, PrintSetup, SheetMark } from "../../workbook/drawing";

export type SheetRecord = {
  /** The grid's id of the sheet that the record was made for. */
  readonly sheetId: string;
  readonly mark: SheetMark | null;
  readonly written: string | null;
  readonly print: PrintSetup | null;
  /** The grid shows none of them; they are kept for the file that is saved. Absent for none. */
  readonly pictures?: readonly DrawnPicture[];
};

export type Settings = Readonly<Record<string, string>>;

const place = "cribsheet";

type SetRecordParams = {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly record: SheetRecord | null;
};

/** Changes a sheet's record, as a step that can be undone like any other. */
export const SetRecordMutation: IMutation<SetRecordParams> = {
  id: "cribsheet.mutation.set-record",
  type: CommandType.MUTATION,
  handler: (accessor, { unitId, subUnitId, record }) => {
    const workbook = accessor.get(IUniverInstanceService).getUnit<GridWorkbook>(unitId);
    const config = workbook?.getSheetBySheetId(subUnitId)?.getConfig();
    if (config === undefined) return false;
    config.custom = { ...config.custom, [place]: record };
    return true;
  },
};

/** A sheet's `custom` data with `record` in it, for a sheet that is about to be made. */
export const customWithRecord = (record: SheetRecord): Record<string, unknown> => ({
  [place]: record,
});

/** The sheet's record as it stands, or `null`. One that was copied with its sheet is ours no more. */
export function sheetRecord(sheet: Worksheet): SheetRecord | null {
  const record = sheet.getConfig().custom?.[place] as SheetRecord | null | undefined;
  if (record === null || record === undefined) return null;
  return record.sheetId === sheet.getSheetId()
    ? record
    : { ...record, sheetId: sheet.getSheetId(), mark: null, written: null };
}

export const readSettings = (workbook: GridWorkbook): Settings =>
  (workbook.getSnapshot().custom?.[place] as Settings | undefined) ?? {};

/** Settings are not undone with the cells: they change the workbook in place. */
export function keepSetting(workbook: GridWorkbook, key: string, text: string): void {
  const snapshot = workbook.getSnapshot();
  snapshot.custom = { ...snapshot.custom, [place]: { ...readSettings(workbook), [key]: text } };
}

/** A workbook's `custom` data with `settings` in it, for a workbook that is about to be made. */
export const customWithSettings = (settings: Settings): Record<string, unknown> => ({
  [place]: settings,
});
