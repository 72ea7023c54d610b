/** Keeps corrections inside the workbook once the sheets that show them are written. */
import type { Block } from "../../core/base/cell";
import type { Result } from "../../core/base/result";
import { isNothing, type ReadSheet, type TypedRow } from "../../core/corrections/correction";
import type { Corrections } from "../../core/corrections/corrections";
import { mergeCorrections } from "../../core/corrections/merge";
import {
  sparesOn,
  type CorrectionRecord,
  type WrittenRows,
  type WrittenSpares,
} from "../../core/corrections/record";
import { rowKey } from "../../core/corrections/rowName";
import type { Estimate } from "../../core/estimate/estimate";
import { itemKey } from "../../core/pricing/item";
import { readHardwareTable } from "../../tables/hardwareTable";
import { shownValue, type Drawing } from "../../workbook/drawing";
import type { Workbook, WorkbookFault, WrittenSheet } from "../../workbook/workbook";
import { keepRecord } from "./correctionRecord";
import { hardwareRules, isHardware, type ReadCorrections } from "./corrections";

/**
 * Keeps the record, after `drawings` were written. What a person typed between reading and writing
 * stands on a sheet that was kept; it is taken into the record from there, and shows the next time.
 *
 * Error: the host refused; the sheets stand, and the next writing puts the record right.
 */
export async function keepCorrections(
  workbook: Workbook,
  read: ReadCorrections,
  estimate: Estimate,
  drawings: readonly Drawing[],
  sheets: readonly WrittenSheet[],
): Promise<Result<null, WorkbookFault>> {
  const { record } = read.input;
  const next = recordAfter(record, estimate, drawings);
  const late: ReadSheet[] = [];
  for (const { mark, keptAs } of sheets) {
    if (mark === null || keptAs === null || !isHardware(mark)) continue;
    const block = await twice(() => workbook.read({ kind: "sheet", sheet: keptAs }));
    if (!block.ok) return block;
    const table = readHardwareTable(block.value, hardwareRules(record, mark.subject));
    if (table !== null) late.push(table.sheet);
  }
  const seen = seenOn(estimate.corrections);
  const merged = mergeCorrections({ ...next, sheets: seen }, late);
  const { corrections } = merged;
  return await twice(() => keepRecord(workbook, { ...next, corrections }, read.damaged));
}

/** Once more where the host refuses, as it does while a person types in a cell. */
async function twice<T>(
  act: () => Promise<Result<T, WorkbookFault>>,
): Promise<Result<T, WorkbookFault>> {
  const first = await act();
  return first.ok ? first : await act();
}

/** The record once the drawings stand. */
export function recordAfter(
  before: CorrectionRecord,
  { corrections, jobs, items }: Estimate,
  drawings: readonly Drawing[],
): CorrectionRecord {
  const used = jobs.flatMap(({ material }) => material.lines.map(({ line }) => itemKey(line.item)));
  const spares = Object.fromEntries(
    [...new Set(used)].flatMap((key) => {
      const item = items.get(key);
      return item === undefined ? [] : [[key, item.spares] as const];
    }),
  );
  const kept = new Map(corrections.kept.map((each) => [rowKey(each.name), each.typed]));
  const drawn = drawings.flatMap((drawing) => drawnRows(drawing, spares, kept));
  const subjects = new Set(drawn.map(({ subject }) => subject));
  const stale = seenOn(corrections)
    .filter(({ subject }) => !subjects.has(subject))
    .map((sheet) => ({ ...sheet, spares: otherSpares(sparesOn(before, sheet.subject), spares) }));
  return {
    corrections: corrections.kept,
    sheets: [...drawn, ...stale],
    jobs: corrections.lost.length === 0 ? jobs.map(({ job }) => job) : before.jobs,
    spares,
  };
}

/** What was typed on the sheets as they were read. */
const seenOn = ({ sheets }: Corrections): readonly WrittenRows[] =>
  sheets.map(({ subject, rows }) => ({
    subject,
    rows: rows.filter(({ typed }) => !isNothing(typed)).map(({ name, typed }) => ({ name, typed })),
    spares: {},
  }));

/** Entries that are not the same in `now`. */
function otherSpares(before: WrittenSpares, now: WrittenSpares): WrittenSpares {
  const entries = Object.entries(before).filter(([key, { percent, least }]) => {
    const rule = Object.hasOwn(now, key) ? now[key] : undefined;
    return rule?.percent !== percent || rule.least !== least;
  });
  return Object.fromEntries(entries);
}

/** What a hardware sheet says of itself as it is drawn; nothing for a sheet of another kind. */
function drawnRows(
  drawing: Drawing,
  spares: WrittenSpares,
  kept: ReadonlyMap<string, TypedRow>,
): readonly WrittenRows[] {
  const read = readDrawnHardware(drawing, spares);
  if (read === null) return [];
  const rows = read.rows.map(({ name, typed }) => {
    // Spares that were typed and come to what the rule gives look as if they were by the rule.
    const own = name === null ? "" : (kept.get(rowKey(name))?.spares ?? "");
    return { name, typed: own === "" ? typed : { ...typed, spares: own } };
  });
  const written = rows.filter(({ typed }) => !isNothing(typed));
  return [{ subject: read.subject, rows: written, spares: {} }];
}

/** A hardware sheet read as it is drawn; `null` for a sheet of another kind. */
export function readDrawnHardware(drawing: Drawing, spares: WrittenSpares): ReadSheet | null {
  const { mark, name } = drawing;
  if (mark === null || !isHardware(mark)) return null;
  const block: Block = {
    sheet: name,
    row: 0,
    column: 0,
    rows: drawing.rows.map(({ cells }) =>
      cells.map((cell) => (cell === null ? null : shownValue(cell))),
    ),
  };
  const rules = { subject: mark.subject, spares, written: [] };
  return readHardwareTable(block, rules)?.sheet ?? null;
}
