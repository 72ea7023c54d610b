/** How a schedule is laid out on its sheet: where the headings stand and which column is what. */
import {
  cellText,
  columnIndex,
  placeName,
  type Block,
  type CellPlace,
  type CellValue,
} from "../core/base/cell";
import { makeFinding, type Finding } from "../core/base/finding";
import { err, ok, type Result } from "../core/base/result";
import { normalName } from "../core/formulas/names";
import type { ScheduleKey } from "../core/openings/openingRow";
import { findHeadingRow, matchHeadings, type ColumnMatch, type HeadingMatch } from "./headings";
import { scheduleColumns } from "./scheduleColumns";
import { scheduleFindings } from "./scheduleFindings";

/** Which column is what, said by the person: a heading's text, a column's letters, or `noColumn`. */
export type ScheduleMapping = Readonly<Partial<Record<ScheduleKey, string>>>;

/** In a mapping: no column is this one, whatever its heading looks like. */
export const noColumn = "—";

export type ScheduleLayout = {
  /** Counted from the block's first row. */
  readonly headingIndex: number;
  readonly columns: readonly ColumnMatch<ScheduleKey>[];
  /** The further columns that have a heading. */
  readonly others: readonly { readonly column: number; readonly heading: string }[];
  /** The name that formulas use for a further column, by column. */
  readonly otherNames: ReadonlyMap<number, string>;
  readonly otherHeadings: Readonly<Record<string, string>>;
  readonly findings: readonly Finding[];
};

const sizeKeys: readonly ScheduleKey[] = ["width", "height"];

/**
 * The heading row is the one with the most known headings (three at least, or as many as `mapping`
 * names).
 *
 * Error: one finding that says that no schedule is here, or that a mapped column does not exist.
 */
export function scheduleLayout(
  block: Block,
  mapping: ScheduleMapping = {},
): Result<ScheduleLayout, Finding> {
  const headingIndex = headingRowOf(block, mapping);
  const cells = block.rows[headingIndex];
  if (cells === undefined) {
    const place = placeIn(block, 0, 0);
    return err(makeFinding(scheduleFindings, "no-schedule", { place, found: block.sheet }));
  }
  const fixed = fixedColumns(block, cells, mapping);
  if (!fixed.ok) return fixed;
  const rules = scheduleColumns.filter(({ key }) => mapping[key] !== noColumn);
  const match = matchHeadings(cells, rules, fixed.value);
  return ok({
    headingIndex,
    columns: match.matches,
    others: [...match.others, ...match.repeats].sort((one, other) => one.column - other.column),
    ...otherColumns(match),
    findings: headingFindings(block, headingIndex, match),
  });
}

/**
 * Whether a block is a schedule by its headings: `whole` with width and height among at least three
 * that are known, `part` with one of the two, so that the person can be told what is missing.
 */
export function scheduleLikeness(block: Block): "whole" | "part" | "none" {
  const row = block.rows[findHeadingRow(block.rows, scheduleColumns, 3)];
  if (row === undefined) return "none";
  const keys = matchHeadings(row, scheduleColumns).matches.map((match) => match.key);
  const sizes = sizeKeys.filter((key) => keys.includes(key)).length;
  return sizes === sizeKeys.length ? "whole" : sizes > 0 ? "part" : "none";
}

/** The place of a cell that is counted from the block's first. */
export const placeIn = (block: Block, row: number, column: number): CellPlace => ({
  sheet: block.sheet,
  row: block.row + row,
  column: block.column + column,
});

const labelOf = (key: ScheduleKey): string =>
  scheduleColumns.find((rule) => rule.key === key)?.label ?? key;

const plain = (value: CellValue | string): string => cellText(value).trim().toLowerCase();

function headingRowOf(block: Block, mapping: ScheduleMapping): number {
  const guessed = findHeadingRow(block.rows, scheduleColumns, 3);
  const wanted = Object.values(mapping)
    .filter((text) => text !== noColumn)
    .map(plain);
  if (guessed >= 0 || wanted.length === 0) return guessed;
  return block.rows.findIndex((row) => {
    const texts = row.map(plain);
    return wanted.some((text) => texts.includes(text));
  });
}

function fixedColumns(
  block: Block,
  cells: readonly CellValue[],
  mapping: ScheduleMapping,
): Result<ReadonlyMap<ScheduleKey, number>, Finding> {
  const fixed = new Map<ScheduleKey, number>();
  for (const { key, label } of scheduleColumns) {
    const wanted = mapping[key]?.trim();
    if (wanted === undefined || wanted === "" || wanted === noColumn) continue;
    const byHeading = cells.findIndex((cell) => plain(cell) === wanted.toLowerCase());
    const byLetters = /^[A-Za-z]{1,3}$/.test(wanted) ? columnIndex(wanted) - block.column : -1;
    const column = byHeading >= 0 ? byHeading : byLetters;
    if (column < 0 || column >= widthOf(block)) {
      const values = { column: label };
      return err(makeFinding(scheduleFindings, "mapped-column-missing", { found: wanted, values }));
    }
    fixed.set(key, column);
  }
  return ok(fixed);
}

const widthOf = (block: Block): number =>
  block.rows.reduce((width, row) => Math.max(width, row.length), 0);

/** A further column is a field unless its name is taken by one that came before. */
function otherColumns({
  others,
  repeats,
}: HeadingMatch<ScheduleKey>): Pick<ScheduleLayout, "otherNames" | "otherHeadings"> {
  const otherNames = new Map<number, string>();
  const otherHeadings: Record<string, string> = {};
  for (const { column, heading } of [...others, ...repeats]) {
    const name = normalName(heading);
    if (name === "" || Object.hasOwn(otherHeadings, name)) continue;
    if (scheduleColumns.some((rule) => rule.key === name)) continue;
    otherHeadings[name] = heading;
    otherNames.set(column, name);
  }
  return { otherNames, otherHeadings };
}

function headingFindings(
  block: Block,
  headingIndex: number,
  { matches, repeats }: HeadingMatch<ScheduleKey>,
): readonly Finding[] {
  const place = (column: number): CellPlace => placeIn(block, headingIndex, column);
  const twice = repeats.map((repeat) => {
    const used = matches.find((match) => match.key === repeat.key);
    const values = { used: used === undefined ? "" : placeName(place(used.column)) };
    const details = { place: place(repeat.column), found: repeat.heading, values };
    return makeFinding(scheduleFindings, "heading-twice", details);
  });
  const missing = sizeKeys
    .filter((key) => !matches.some((match) => match.key === key))
    .map((key) => {
      const values = { column: labelOf(key) };
      return makeFinding(scheduleFindings, "column-missing", { place: place(0), values });
    });
  return [...twice, ...missing];
}
