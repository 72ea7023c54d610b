/** What is kept of corrections inside the workbook, so that a deleted sheet loses none. */
import type { Correction, TypedRow } from "./correction";
import type { RowName } from "./rowName";

/** A row as it was written, or last seen, on a sheet; only rows in which something was typed. */
export type WrittenRow = { readonly name: RowName | null; readonly typed: TypedRow };

export type WrittenRows = {
  /** The subject of the sheet's mark. */
  readonly subject: string;
  readonly rows: readonly WrittenRow[];
  /** The items' spares when it was written, where they were not those of the record. */
  readonly spares: WrittenSpares;
};

/** The spares of items when sheets were written, by the item's key: a percentage and a least number. */
export type WrittenSpares = Readonly<
  Record<string, { readonly percent: number; readonly least: number }>
>;

/** The spares by which a sheet was written. */
export const sparesOn = (record: CorrectionRecord, subject: string): WrittenSpares => ({
  ...record.spares,
  ...record.sheets.find((sheet) => sheet.subject === subject)?.spares,
});

/** What was typed on a sheet when it was written or last seen. */
export const writtenOn = ({ sheets }: CorrectionRecord, subject: string): readonly WrittenRow[] =>
  sheets.find((sheet) => sheet.subject === subject)?.rows ?? [];

export type CorrectionRecord = {
  readonly corrections: readonly Correction[];
  readonly sheets: readonly WrittenRows[];
  /** The jobs of the schedule when sheets were last written and none of them was gone. */
  readonly jobs: readonly string[];
  readonly spares: WrittenSpares;
};

export const noRecord: CorrectionRecord = { corrections: [], sheets: [], jobs: [], spares: {} };
