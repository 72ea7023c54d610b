/** A block of cells -> the schedule's rows: finds the headings, skips what is no opening and says so. */
import {
  cellText,
  columnIndex,
  isBlank,
  placeName,
  type Block,
  type CellPlace,
  type CellValue,
  type TypedCell,
} from "../core/base/cell";
import { makeFinding, type Finding } from "../core/base/finding";
import { err, ok, type Result } from "../core/base/result";
import { normalName } from "../core/formulas/names";
import type { OpeningRow, Schedule, ScheduleKey } from "../core/openings/openingRow";
import { findHeadingRow, matchHeadings, type ColumnMatch } from "./headings";
import { scheduleColumns } from "./scheduleColumns";
import { scheduleFindings } from "./scheduleFindings";

/** Which column is what, said by the person: a heading's text, or a column's letters. */
export type ScheduleMapping = Readonly<Partial<Record<ScheduleKey, string>>>;

export type ScheduleReading = {
  readonly schedule: Schedule;
  /** The row of the headings, counted from zero on the sheet. */
  readonly headingRow: number;
  readonly columns: readonly ColumnMatch<ScheduleKey>[];
  readonly others: readonly { readonly column: number; readonly heading: string }[];
  readonly findings: readonly Finding[];
};

const sizeKeys: readonly ScheduleKey[] = ["width", "height"];

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
  const headingIndex = headingRowOf(block, mapping);
  const cells = block.rows[headingIndex];
  if (cells === undefined) {
    return err(
      makeFinding(scheduleFindings, "no-schedule", {
        place: placeOf(block, 0, 0),
        found: block.sheet,
      }),
    );
  }
  const fixed = fixedColumns(block, cells, mapping);
  if (!fixed.ok) return fixed;
  const { matches, others, repeats } = matchHeadings(cells, scheduleColumns, fixed.value);
  const at = (row: number, column: number): CellPlace => placeOf(block, row, column);

  const findings: Finding[] = repeats.map((repeat) => {
    const used = matches.find((match) => match.key === repeat.key);
    return makeFinding(scheduleFindings, "heading-twice", {
      place: at(headingIndex, repeat.column),
      found: repeat.heading,
      values: { used: used === undefined ? "" : placeName(at(headingIndex, used.column)) },
    });
  });
  for (const key of sizeKeys) {
    if (matches.some((match) => match.key === key)) continue;
    findings.push(
      makeFinding(scheduleFindings, "column-missing", {
        place: at(headingIndex, 0),
        values: { column: labelOf(key) },
      }),
    );
  }

  const otherNames = new Map<number, string>();
  const otherHeadings: Record<string, string> = {};
  // A further column is a field unless its name is taken by one that came before.
  for (const { column, heading } of [...others, ...repeats]) {
    const name = normalName(heading);
    if (name === "" || Object.hasOwn(otherHeadings, name)) continue;
    if (scheduleColumns.some((rule) => rule.key === name)) continue;
    otherHeadings[name] = heading;
    otherNames.set(column, name);
  }

  const rows: OpeningRow[] = [];
  const headingText = textOf(cells);
  const jobColumn = matches.find((match) => match.key === "job")?.column;
  // A job's name alone on a row heads the rows below it that name no job.
  let jobAbove: TypedCell | null = null;
  for (const [index, row] of block.rows.entries()) {
    if (index <= headingIndex || row.every(isBlank)) continue;
    if (textOf(row) === headingText) continue;
    const skipped = skippedAs(row, matches);
    if (skipped !== null) {
      const { code, column } = skipped;
      if (code === "title-row" && column === jobColumn) {
        jobAbove = { value: row[column] ?? null, place: at(index, column) };
      }
      findings.push(
        makeFinding(scheduleFindings, code, {
          place: at(index, column),
          found: cellText(row[column] ?? null).trim(),
        }),
      );
      continue;
    }
    const cell = (column: number): TypedCell => {
      const value = row[column] ?? null;
      if (column === jobColumn && isBlank(value) && jobAbove !== null) return jobAbove;
      return { value, place: at(index, column) };
    };
    rows.push({
      place: at(index, 0),
      cells: Object.fromEntries(matches.map(({ key, column }) => [key, cell(column)])),
      others: Object.fromEntries([...otherNames].map(([column, name]) => [name, cell(column)])),
    });
  }
  return ok({
    schedule: {
      sheet: block.sheet,
      units: Object.fromEntries(matches.map(({ key, unit }) => [key, unit])),
      otherHeadings,
      rows,
    },
    headingRow: block.row + headingIndex,
    columns: matches,
    others,
    findings,
  });
}

/**
 * How much a block looks like a schedule: the count of known headings in its best row, and zero
 * where width, height or both are missing.
 */
export function scheduleLikeness(block: Block): number {
  const row = block.rows[findHeadingRow(block.rows, scheduleColumns, 3)];
  if (row === undefined) return 0;
  const keys = matchHeadings(row, scheduleColumns).matches.map((match) => match.key);
  return sizeKeys.every((key) => keys.includes(key)) ? keys.length : 0;
}

const labelOf = (key: ScheduleKey): string =>
  scheduleColumns.find((rule) => rule.key === key)?.label ?? key;

const placeOf = (block: Block, row: number, column: number): CellPlace => ({
  sheet: block.sheet,
  row: block.row + row,
  column: block.column + column,
});

const textOf = (row: readonly CellValue[]): string =>
  row
    .map((value) => cellText(value).trim().toLowerCase())
    .join("\t")
    .trimEnd();

function headingRowOf(block: Block, mapping: ScheduleMapping): number {
  const wanted = Object.values(mapping).map((text) => text.trim().toLowerCase());
  const named = block.rows.findIndex((row) => {
    const texts = row.map((value) => cellText(value).trim().toLowerCase());
    return wanted.some((text) => texts.includes(text));
  });
  const guessed = findHeadingRow(block.rows, scheduleColumns, 3);
  return named >= 0 && guessed < 0 ? named : guessed;
}

function fixedColumns(
  block: Block,
  cells: readonly CellValue[],
  mapping: ScheduleMapping,
): Result<ReadonlyMap<ScheduleKey, number>, Finding> {
  const fixed = new Map<ScheduleKey, number>();
  for (const { key, label } of scheduleColumns) {
    const wanted = mapping[key]?.trim();
    if (wanted === undefined || wanted === "") continue;
    const byHeading = cells.findIndex(
      (cell) => cellText(cell).trim().toLowerCase() === wanted.toLowerCase(),
    );
    const byLetters = /^[A-Za-z]{1,3}$/.test(wanted) ? columnIndex(wanted) - block.column : -1;
    const column = byHeading >= 0 ? byHeading : byLetters;
    if (column < 0 || column >= Math.max(...block.rows.map((row) => row.length))) {
      return err(
        makeFinding(scheduleFindings, "mapped-column-missing", {
          found: wanted,
          values: { column: label },
        }),
      );
    }
    fixed.set(key, column);
  }
  return ok(fixed);
}

type Skipped = { readonly code: "total-row" | "title-row"; readonly column: number };

/** Why a row that holds something is no opening, and the cell that says so; `null` where it is one. */
function skippedAs(
  row: readonly CellValue[],
  matches: readonly ColumnMatch<ScheduleKey>[],
): Skipped | null {
  const filled = row.flatMap((value, column) => (isBlank(value) ? [] : [column]));
  const keyAt = (column: number) => matches.find((match) => match.column === column)?.key;
  const keys = filled.map(keyAt);
  if (keys.includes("width") || keys.includes("height") || keys.includes("type")) return null;
  const total = filled.find((column) =>
    /^(grand |sub-?\s?)?totals?\b|^sum\b/i.test(cellText(row[column] ?? null).trim()),
  );
  if (total !== undefined) return { code: "total-row", column: total };
  // A lone text outside the mark column is a title such as a level's name; with a mark it is an unfinished opening.
  const [only, ...others] = filled;
  if (only === undefined || others.length > 0 || typeof row[only] !== "string") return null;
  return keyAt(only) === "mark" ? null : { code: "title-row", column: only };
}
