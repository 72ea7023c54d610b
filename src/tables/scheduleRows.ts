/** The rows of a schedule below its headings: what is an opening, and what is skipped and why. */
import { cellText, isBlank, type Block, type CellValue, type TypedCell } from "../core/base/cell";
import { makeFinding, type Finding } from "../core/base/finding";
import type { OpeningRow, ScheduleKey } from "../core/openings/openingRow";
import { scheduleFindings } from "./scheduleFindings";
import { placeIn, type ScheduleLayout } from "./scheduleLayout";

export type ScheduleRows = {
  readonly rows: readonly OpeningRow[];
  /** What was skipped. */
  readonly findings: readonly Finding[];
  /** A job's name that stands alone on a row and heads the rows below it that name no job. */
  readonly jobAbove: TypedCell | null;
};

/**
 * The block's rows from `from` up to and without `to` (both counted from the block's first, and
 * below the headings). Rows are openings except blank rows, repeated headings, totals and lone
 * titles. `jobAbove` is what the rows before left.
 */
export function readScheduleRows(
  block: Block,
  layout: ScheduleLayout,
  from: number,
  to: number,
  jobAbove: TypedCell | null,
): ScheduleRows {
  const { columns, otherNames, headingIndex } = layout;
  const rows: OpeningRow[] = [];
  const findings: Finding[] = [];
  const keys = new Map(columns.map(({ column, key }) => [column, key]));
  const jobColumn = columns.find(({ key }) => key === "job")?.column;
  const headings = block.rows[headingIndex] ?? [];
  let job = jobAbove;
  for (let index = from; index < Math.min(to, block.rows.length); index += 1) {
    const row = block.rows[index] ?? [];
    if (row.every(isBlank) || isSameText(row, headings)) continue;
    const skipped = skippedAs(row, keys);
    if (skipped !== null) {
      const { code, column } = skipped;
      const value = row[column] ?? null;
      const place = placeIn(block, index, column);
      if (code === "title-row" && column === jobColumn) job = { value, place };
      findings.push(makeFinding(scheduleFindings, code, { place, found: cellText(value).trim() }));
      continue;
    }
    const cell = (column: number): TypedCell => {
      const value = row[column] ?? null;
      if (column === jobColumn && isBlank(value) && job !== null) return job;
      return { value, place: placeIn(block, index, column) };
    };
    const cells: Partial<Record<ScheduleKey, TypedCell>> = {};
    for (const { key, column } of columns) cells[key] = cell(column);
    const others: Record<string, TypedCell> = {};
    for (const [column, name] of otherNames) others[name] = cell(column);
    rows.push({ place: placeIn(block, index, 0), cells, others });
  }
  return { rows, findings, jobAbove: job };
}

/** Whether the rows show the same text in every column, in any case. */
function isSameText(row: readonly CellValue[], other: readonly CellValue[]): boolean {
  const width = Math.max(row.length, other.length);
  for (let column = 0; column < width; column += 1) {
    if (plain(row[column]) !== plain(other[column])) return false;
  }
  return true;
}

const plain = (value: CellValue | undefined): string =>
  cellText(value ?? null)
    .trim()
    .toLowerCase();

type Skipped = { readonly code: "total-row" | "title-row"; readonly column: number };

/** What makes a row an opening whatever else it says. */
const tellingKeys: ReadonlySet<ScheduleKey | undefined> = new Set(["width", "height", "type"]);

/** Why a row that holds something is no opening, and the cell that says so; `null` where it is one. */
function skippedAs(
  row: readonly CellValue[],
  keys: ReadonlyMap<number, ScheduleKey>,
): Skipped | null {
  const filled = row.flatMap((value, column) => (isBlank(value) ? [] : [column]));
  if (filled.some((column) => tellingKeys.has(keys.get(column)))) return null;
  const total = filled.find((column) =>
    /^(grand |sub-?\s?)?totals?\b|^sum\b/i.test(cellText(row[column] ?? null).trim()),
  );
  if (total !== undefined) return { code: "total-row", column: total };
  // A lone text outside the mark column is a title such as a level's name; with a mark it is an unfinished opening.
  const [only, ...others] = filled;
  if (only === undefined || others.length > 0 || typeof row[only] !== "string") return null;
  return keys.get(only) === "mark" ? null : { code: "title-row", column: only };
}
