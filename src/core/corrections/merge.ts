/**
 * What stands on the hardware sheets, put together with what is on record.
 *
 * Each sheet is compared with what was written on it (or seen there) last: only what differs from
 * that is a person's doing, so a sheet that has gone stale never brings an old correction back.
 *
 * 1. A row whose cells changed: what stands there counts.
 * 2. A row whose cells were cleared: its correction is taken away.
 * 3. A row that is gone, or a sheet that is gone: the record counts, and a doubt says so.
 * 4. A row without a name that holds something: a person put it in; it is a row added by hand.
 * 5. Two rows that say different things of one line, or a row that is typed over where something else
 *    was on record: the first, or the newer, counts; the other is kept beside it.
 */
import type { CellPlace } from "../base/cell";
import { jobKey } from "../takeoff/takeOff";
import {
  isNothing,
  isSameMeaning,
  isSameTyped,
  type Correction,
  type ReadRow,
  type ReadSheet,
  type TypedRow,
} from "./correction";
import { writtenOn, type CorrectionRecord, type WrittenRow } from "./record";
import { freeName, jobOf, rowKey, type AddedName, type RowName } from "./rowName";

export type MergeDoubt = {
  /** `row-gone`: its row. `sheet-gone`: its sheet. `put-in`: it was a row without a name. */
  readonly code: "row-gone" | "sheet-gone" | "put-in";
  readonly name: RowName;
  readonly place: CellPlace | null;
};

export type Merged = {
  readonly corrections: readonly Correction[];
  readonly doubts: readonly MergeDoubt[];
  /** The cell in which each one stands now, by `rowKey`; one that is only on record has none. */
  readonly places: ReadonlyMap<string, CellPlace>;
};

/** Puts the sheets and the record together. Of two sheets that differ the first one counts. */
export function mergeCorrections(record: CorrectionRecord, sheets: readonly ReadSheet[]): Merged {
  const draft = startDraft(record);
  const changes = sheets.flatMap((sheet) =>
    changesOn(draft, sheet, writtenOn(record, sheet.subject)),
  );
  // What a person saw and typed over or cleared, on whatever sheet, is not said any more.
  for (const { row, shown } of changes) takeAway(draft, keyOf(row.name), shown);
  for (const { row } of changes) if (!isNothing(row.typed)) setRow(draft, row);
  for (const { subject, rows } of record.sheets) {
    const isThere = sheets.some((sheet) => sheet.subject === subject);
    for (const { name } of rows) doubtMissing(draft, name, isThere ? "row-gone" : "sheet-gone");
  }
  return { corrections: [...draft.kept.values()], doubts: draft.doubts, places: draft.places };
}

type Draft = {
  readonly kept: Map<string, Correction>;
  /** Names that got something new in this merging. */
  readonly set: Set<string>;
  readonly doubts: MergeDoubt[];
  readonly places: Map<string, CellPlace>;
  /** The highest number of a row added by hand, by job. */
  readonly numbers: Map<string, number>;
};

function startDraft({ corrections, sheets }: CorrectionRecord): Draft {
  const kept = new Map(corrections.map((each) => [rowKey(each.name), each]));
  const draft: Draft = {
    kept,
    set: new Set(),
    doubts: [],
    places: new Map(),
    numbers: new Map(),
  };
  for (const { name } of corrections) noteNumber(draft, name);
  for (const { rows } of sheets) for (const { name } of rows) noteNumber(draft, name);
  return draft;
}

function noteNumber({ numbers }: Draft, name: RowName | null): void {
  if (name?.kind !== "added") return;
  const job = jobKey(name.job);
  numbers.set(job, Math.max(numbers.get(job) ?? 0, name.number));
}

const keyOf = (name: RowName | null): string => (name === null ? "" : rowKey(name));

/** A row that is not as it was; `shown` is what the sheet had in it and has not any more. */
type ChangedRow = { readonly row: ReadRow; readonly shown: readonly TypedRow[] };

function changesOn(
  draft: Draft,
  { rows }: ReadSheet,
  written: readonly WrittenRow[],
): readonly ChangedRow[] {
  const waiting = new Map<string, TypedRow[]>();
  for (const { name, typed } of written) {
    const key = keyOf(name);
    waiting.set(key, [...(waiting.get(key) ?? []), typed]);
  }
  const changed: ReadRow[] = [];
  const standing: ReadRow[] = [];
  for (const row of rows) {
    noteNumber(draft, row.name);
    const isAsBefore = isUnchanged(waiting, keyOf(row.name), row.typed);
    (isAsBefore ? standing : changed).push(row);
  }
  for (const row of standing) notePlace(draft, keyOf(row.name), row);
  return changed.map((row) => {
    const key = keyOf(row.name);
    const alike = standing.filter(({ name }) => keyOf(name) === key);
    // Of two rows that said the same, the one that is left still says it.
    const shown = (waiting.get(key) ?? []).filter(
      (each) => !alike.some(({ typed }) => isSameTyped(typed, each)),
    );
    return { row, shown };
  });
}

/** Takes one such row from those that wait; a second row alike is a new one. */
function isUnchanged(waiting: Map<string, TypedRow[]>, key: string, typed: TypedRow): boolean {
  const rows = waiting.get(key) ?? [];
  const at = rows.findIndex((each) => isSameTyped(each, typed));
  if (at < 0) return isNothing(typed) && rows.length === 0;
  waiting.set(key, rows.toSpliced(at, 1));
  return true;
}

function notePlace({ places, kept }: Draft, key: string, { place }: ReadRow): void {
  if (kept.has(key) && !places.has(key)) places.set(key, place);
}

/** Takes away what is kept of a row if that is what the sheet showed. */
function takeAway({ kept, places }: Draft, key: string, shown: readonly TypedRow[]): void {
  const before = kept.get(key);
  if (before === undefined || !shown.some((each) => isSameMeaning(each, before.typed))) return;
  kept.delete(key);
  places.delete(key);
}

/** What is kept of the row all the same was not seen by who typed there: it stays beside. */
function setRow(draft: Draft, row: ReadRow): void {
  const { kept, places, set } = draft;
  const name = row.name ?? nextAdded(draft, row.job);
  const key = rowKey(name);
  const before = kept.get(key);
  if (row.name === null) draft.doubts.push({ code: "put-in", name, place: row.place });
  const next: Correction = { name, typed: row.typed, counted: row.counted };
  const isSame = before !== undefined && isSameTyped(before.typed, row.typed);
  if (set.has(key) && !isSame) {
    putBeside(draft, next, row.place);
    return;
  }
  set.add(key);
  kept.set(key, next);
  if (before !== undefined && !isSame) putBeside(draft, before, places.get(key) ?? null);
  places.set(key, row.place);
}

/** Keeps another thing said of a row under a name of its own, unless that is there already. */
function putBeside(draft: Draft, other: Correction, place: CellPlace | null): void {
  const { name, typed } = other;
  if (name.kind === "move") return;
  const beside = [...draft.kept.values()].filter((each) => isBeside(each.name, name));
  if (beside.some((each) => isSameTyped(each.typed, typed))) return;
  const free =
    name.kind === "added"
      ? nextAdded(draft, name.job)
      : freeName(name, (key) => draft.kept.has(key));
  const key = rowKey(free);
  draft.set.add(key);
  if (place !== null) draft.places.set(key, place);
  draft.kept.set(key, { ...other, name: free });
}

const isBeside = (one: RowName, other: RowName): boolean =>
  one.kind === other.kind &&
  (one.kind === "line" && other.kind === "line"
    ? rowKey({ ...one, copy: 1 }) === rowKey({ ...other, copy: 1 })
    : jobKey(jobOf(one)) === jobKey(jobOf(other)));

/** A correction that is on record and stands on no sheet. */
function doubtMissing(
  { kept, doubts, set, places }: Draft,
  name: RowName | null,
  code: "row-gone" | "sheet-gone",
): void {
  if (name === null || name.kind === "move") return;
  const key = rowKey(name);
  if (!kept.has(key) || set.has(key) || places.has(key)) return;
  if (!doubts.some((doubt) => rowKey(doubt.name) === key)) doubts.push({ code, name, place: null });
}

function nextAdded(draft: Draft, job: string): AddedName {
  const number = (draft.numbers.get(jobKey(job)) ?? 0) + 1;
  const name: AddedName = { kind: "added", job, number };
  noteNumber(draft, name);
  return name;
}
