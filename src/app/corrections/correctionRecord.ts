/** The record of corrections as the workbook keeps it: one setting, as JSON. */
import {
  nothingTyped,
  typedColumns,
  type Correction,
  type TypedColumn,
  type TypedRow,
} from "../../core/corrections/correction";
import {
  noRecord,
  type CorrectionRecord,
  type WrittenRow,
  type WrittenRows,
  type WrittenSpares,
} from "../../core/corrections/record";
import { readRowName, writeRowName } from "../../core/corrections/rowName";
import type { Workbook } from "../../workbook/workbook";
import { jsonValue } from "../jsonValue";

const settingKey = "corrections";
/** Where a record goes that cannot be read, before another takes its place. */
const damagedKey = "corrections.damaged";

export type ReadRecord = {
  readonly record: CorrectionRecord;
  /** The text of a record that cannot be read, or only in part; `null` where all was read. */
  readonly damaged: string | null;
};

/** No record is an empty one. What can be read of a damaged one is read. */
export async function readRecord(workbook: Pick<Workbook, "readSetting">): Promise<ReadRecord> {
  const text = await workbook.readSetting(settingKey);
  if (text === null) return { record: noRecord, damaged: null };
  const faults = { count: 0 };
  const record = recordOf(jsonValue(text), faults);
  return { record, damaged: faults.count === 0 ? null : text };
}

/** Keeps the record; what could not be read of the one before is kept beside it. */
export async function keepRecord(
  workbook: Pick<Workbook, "writeSetting">,
  record: CorrectionRecord,
  damaged: string | null,
): ReturnType<Workbook["writeSetting"]> {
  if (damaged !== null) {
    const kept = await workbook.writeSetting(damagedKey, damaged);
    if (!kept.ok) return kept;
  }
  return await workbook.writeSetting(settingKey, recordText(record));
}

type Faults = { count: number };
type Parts = Readonly<Record<string, unknown>>;

/** Rows as `[name, counted, typed…]`, so that a record of many stays small. */
const recordText = ({ corrections, sheets, jobs, spares }: CorrectionRecord): string =>
  JSON.stringify({
    version: 1,
    corrections: corrections.map(({ name, typed, counted }) => [
      writeRowName(name),
      counted,
      ...textsOf(typed),
    ]),
    sheets: sheets.map(({ subject, rows, spares: own }) => ({
      subject,
      spares: sparesParts(own),
      rows: rows.map(({ name, typed }) => [
        name === null ? "" : writeRowName(name),
        null,
        ...textsOf(typed),
      ]),
    })),
    jobs,
    spares: sparesParts(spares),
  });

const sparesParts = (spares: WrittenSpares): Parts =>
  Object.fromEntries(
    Object.entries(spares).map(([key, { percent, least }]) => [key, [percent, least]]),
  );

/** Without the blanks at the end. */
function textsOf(typed: TypedRow): readonly string[] {
  const texts = typedColumns.map((column) => typed[column]);
  return texts.slice(0, texts.findLastIndex((text) => text !== "") + 1);
}

function recordOf(value: unknown, faults: Faults): CorrectionRecord {
  const parts = partsOf(value, faults);
  return {
    corrections: listOf(parts["corrections"], faults).flatMap((row) => correctionOf(row, faults)),
    sheets: listOf(parts["sheets"], faults).map((sheet) => writtenRowsOf(sheet, faults)),
    jobs: listOf(parts["jobs"], faults).filter((job) => typeof job === "string"),
    spares: sparesOf(parts["spares"], faults),
  };
}

function partsOf(value: unknown, faults: Faults): Parts {
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return { ...value };
  faults.count += 1;
  return {};
}

function listOf(value: unknown, faults: Faults): readonly unknown[] {
  if (Array.isArray(value)) return value;
  faults.count += 1;
  return [];
}

function correctionOf(value: unknown, faults: Faults): readonly Correction[] {
  const row = rowOf(value);
  const name = row?.name ?? null;
  if (row === null || name === null) {
    faults.count += 1;
    return [];
  }
  return [{ ...row, name }];
}

function writtenRowsOf(value: unknown, faults: Faults): WrittenRows {
  const { subject, rows, spares } = partsOf(value, faults);
  return {
    spares: sparesOf(spares, faults),
    subject: typeof subject === "string" ? subject : "",
    rows: listOf(rows, faults).flatMap((row): readonly WrittenRow[] => {
      const read = rowOf(row);
      if (read === null) faults.count += 1;
      return read === null ? [] : [{ name: read.name, typed: read.typed }];
    }),
  };
}

function rowOf(value: unknown): (WrittenRow & Pick<Correction, "counted">) | null {
  if (!Array.isArray(value)) return null;
  const [name, counted, ...texts] = value as readonly unknown[];
  if (typeof name !== "string" || !texts.every((text) => typeof text === "string")) return null;
  const read = readRowName(name);
  if (read === null && name !== "") return null;
  const typed: Partial<Record<TypedColumn, string>> = {};
  for (const [index, column] of typedColumns.entries()) typed[column] = texts[index] ?? "";
  return {
    name: read,
    typed: { ...nothingTyped, ...typed },
    counted: typeof counted === "number" && Number.isSafeInteger(counted) ? counted : null,
  };
}

function sparesOf(value: unknown, faults: Faults): WrittenSpares {
  const entries = Object.entries(partsOf(value, faults)).flatMap(([key, rule]) => {
    const [percent, least] = Array.isArray(rule) ? (rule as readonly unknown[]) : [];
    return isFrom0(percent) && isFrom0(least) ? [[key, { percent, least }] as const] : [];
  });
  return Object.fromEntries(entries);
}

const isFrom0 = (value: unknown): value is number =>
  typeof value === "number" && Number.isFinite(value) && value >= 0;
