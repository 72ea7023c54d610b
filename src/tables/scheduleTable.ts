/** A block of cells -> the schedule's rows: finds the headings, skips what is no opening and says so. */
import type { Block } from "../core/base/cell";
import type { Finding } from "../core/base/finding";
import { ok, type Result } from "../core/base/result";
import type { Schedule, ScheduleKey } from "../core/openings/openingRow";
import type { ColumnMatch } from "./headings";
import { scheduleLayout, type ScheduleLayout, type ScheduleMapping } from "./scheduleLayout";
import { readScheduleRows, type ScheduleRows } from "./scheduleRows";

export type ScheduleReading = {
  readonly schedule: Schedule;
  /** The row of the headings, counted from zero on the sheet. */
  readonly headingRow: number;
  /** The column of the sheet that the columns below are counted from. */
  readonly firstColumn: number;
  readonly columns: readonly ColumnMatch<ScheduleKey>[];
  readonly others: readonly { readonly column: number; readonly heading: string }[];
  readonly findings: readonly Finding[];
};

/**
 * Reads a schedule. The heading row is the one with the most known headings (three at least, or as
 * many as `mapping` names); rows below it are openings except blank rows, repeated headings, totals
 * and lone titles, which are skipped with a note.
 *
 * Error: one finding that says that no schedule is here, or that a mapped column does not exist.
 */
export function readSchedule(
  block: Block,
  mapping: ScheduleMapping = {},
): Result<ScheduleReading, Finding> {
  const layout = scheduleLayout(block, mapping);
  if (!layout.ok) return layout;
  const first = layout.value.headingIndex + 1;
  const rows = readScheduleRows(block, layout.value, first, block.rows.length, null);
  return ok(scheduleReading(block, layout.value, [rows]));
}

/** The schedule from its layout and its rows, which may have been read in several parts. */
export const scheduleReading = (
  block: Block,
  { headingIndex, columns, others, otherHeadings, findings }: ScheduleLayout,
  parts: readonly ScheduleRows[],
): ScheduleReading => ({
  schedule: {
    sheet: block.sheet,
    units: Object.fromEntries(columns.map(({ key, unit }) => [key, unit])),
    otherHeadings,
    rows: parts.flatMap((part) => part.rows),
  },
  headingRow: block.row + headingIndex,
  firstColumn: block.column,
  columns,
  others,
  findings: [...findings, ...parts.flatMap((part) => part.findings)],
});
