/**
 * What we keep inside the grid's workbook: each sheet's mark and print setup, and our settings.
 *
 * They stand in the model's own place for foreign data, so they go wherever the workbook goes. A
 * person who copies a sheet copies its record too; a record names its sheet, so a copy is not ours.
 */
import {
  CommandType,
  type ICommandService,
  IUniverInstanceService,
  type IMutation,
  type Nullable,
  type Workbook as GridWorkbook,
  type Worksheet,
} from "@univerjs/core";
import type { DrawnChart, DrawnPicture, PrintSetup, SheetMark } from "../../workbook/drawing";
import type { WorkbookSnapshot } from "../../workbook/snapshot";
import { shiftedChart, shiftedPicture, shiftOf } from "./anchored";

export type SheetRecord = {
  /** The grid's id of the sheet that the record was made for. */
  readonly sheetId: string;
  readonly mark: SheetMark | null;
  readonly written: string | null;
  readonly print: PrintSetup | null;
  /** The grid shows none of them; they are kept for the file that is saved. Absent for none. */
  readonly pictures?: readonly DrawnPicture[];
  readonly charts?: readonly DrawnChart[];
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

/** Moves the pictures and charts of the sheets that a change of the grid shifted. */
export function followCells(
  commands: ICommandService,
  bookOpen: () => Nullable<GridWorkbook>,
): void {
  commands.onCommandExecuted((command) => {
    const shift = shiftOf(command);
    const sheet = shift === null ? null : bookOpen()?.getSheetBySheetId(shift.subUnitId);
    const config = sheet?.getConfig();
    const record = config?.custom?.[place] as SheetRecord | null | undefined;
    if (shift === null || config === undefined || !record) return;
    const { pictures, charts } = record;
    if (pictures === undefined && charts === undefined) return;
    const moved: SheetRecord = {
      ...record,
      ...(pictures === undefined
        ? {}
        : { pictures: pictures.map((picture) => shiftedPicture(shift, picture)) }),
      ...(charts === undefined
        ? {}
        : { charts: charts.flatMap((chart) => shiftedChart(shift, chart) ?? []) }),
    };
    config.custom = { ...config.custom, [place]: moved };
  });
}

export const readSettings = (workbook: GridWorkbook): Settings =>
  (workbook.getSnapshot().custom?.[place] as Settings | undefined) ?? {};

/** Settings are not undone with the cells: they change the workbook in place. */
export function keepSetting(workbook: GridWorkbook, key: string, text: string): void {
  const snapshot = workbook.getSnapshot();
  snapshot.custom = { ...snapshot.custom, [place]: { ...readSettings(workbook), [key]: text } };
}

const leftOutPlace = "cribsheetLeftOut";

/** What the file had that was opened, and the grid cannot hold, in plain words. */
export const readLeftOut = (workbook: GridWorkbook): readonly string[] =>
  (workbook.getSnapshot().custom?.[leftOutPlace] as readonly string[] | undefined) ?? [];

/** The `custom` data of a workbook that is about to be made. */
export const bookCustom = ({
  settings,
  leftOut,
}: Pick<WorkbookSnapshot, "settings" | "leftOut">): Record<string, unknown> => ({
  [place]: settings,
  [leftOutPlace]: leftOut,
});
