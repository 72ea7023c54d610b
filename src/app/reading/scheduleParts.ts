/**
 * A schedule counted in parts of some hundred rows, so that a change to one row counts one part
 * again, and a long schedule is many short steps.
 */
import {
  isSameRow,
  isSameValue,
  type Block,
  type CellValue,
  type TypedCell,
} from "../../core/base/cell";
import type { Steps } from "../../core/base/steps";
import type { Inches } from "../../core/base/units";
import type { KitBook } from "../../core/kitbook/kitBook";
import type { LengthUnit } from "../../core/lengths/length";
import {
  checkRows,
  gatherOpenings,
  type CheckedOpenings,
  type CheckedRow,
} from "../../core/openings/checkOpenings";
import { takeOff, type TakeOff } from "../../core/takeoff/takeOff";
import type { ScheduleLayout } from "../../tables/scheduleLayout";
import { readScheduleRows, type ScheduleRows } from "../../tables/scheduleRows";
import { scheduleReading, type ScheduleReading } from "../../tables/scheduleTable";

const rowsInPart = 100;

/** What a part's count stands on besides its own cells; a part is kept as long as this is the same object. */
export type PartBasis = {
  readonly layout: ScheduleLayout;
  readonly book: KitBook;
  readonly unit: LengthUnit;
  readonly showLength: (length: Inches) => string;
};

/** One part with all that came of it. */
export type SchedulePart = {
  readonly basis: PartBasis;
  readonly cells: readonly (readonly CellValue[])[];
  readonly jobAbove: TypedCell | null;
  readonly read: ScheduleRows;
  readonly checked: readonly CheckedRow[];
  readonly taken: TakeOff;
};

export type CountedSchedule = {
  readonly reading: ScheduleReading;
  readonly checked: CheckedOpenings;
  readonly taken: readonly TakeOff[];
};

/**
 * Counts a schedule, a part a step. Parts in `kept` that are as before are taken from there; those
 * counted are put there at once, so that work that is left off is not lost.
 */
export function* countSchedule(
  block: Block,
  basis: PartBasis,
  kept: SchedulePart[],
): Steps<CountedSchedule> {
  const { layout } = basis;
  const parts: SchedulePart[] = [];
  let jobAbove: TypedCell | null = null;
  for (let from = layout.headingIndex + 1; from < block.rows.length; from += rowsInPart) {
    const cells = block.rows.slice(from, from + rowsInPart);
    const known = kept[parts.length];
    let part: SchedulePart | null =
      known !== undefined && isAsBefore(known, basis, cells, jobAbove) ? known : null;
    if (part === null) {
      yield from / block.rows.length;
      part = countPart(block, basis, from, cells, jobAbove);
      kept[parts.length] = part;
    }
    parts.push(part);
    jobAbove = part.read.jobAbove;
  }
  kept.length = parts.length;
  const reading = scheduleReading(
    block,
    layout,
    parts.map(({ read }) => read),
  );
  yield 1;
  const checkedRows = parts.flatMap(({ checked }) => checked);
  return {
    reading,
    checked: gatherOpenings(reading.schedule.rows, checkedRows),
    taken: parts.map(({ taken }) => taken),
  };
}

function countPart(
  block: Block,
  basis: PartBasis,
  from: number,
  cells: SchedulePart["cells"],
  jobAbove: TypedCell | null,
): SchedulePart {
  const { layout, book, unit, showLength } = basis;
  const read = readScheduleRows(block, layout, from, from + rowsInPart, jobAbove);
  const { schedule } = scheduleReading(block, layout, [read]);
  const types = book.types.map(({ name }) => name);
  const checked = checkRows(schedule, types, unit);
  // A stop is always of the row itself: what rows have together, a mark used twice, stops nothing.
  const openings = checked
    .filter(({ findings }) => findings.every(({ level }) => level !== "stop"))
    .map(({ opening }) => opening);
  const taken = takeOff(book, openings, showLength);
  return { basis, cells, jobAbove, read, checked, taken };
}

const isAsBefore = (
  part: SchedulePart,
  basis: PartBasis,
  cells: SchedulePart["cells"],
  jobAbove: TypedCell | null,
): boolean =>
  part.basis === basis &&
  part.cells.length === cells.length &&
  isSameJob(part.jobAbove, jobAbove) &&
  cells.every((row, index) => isSameRow(row, part.cells[index] ?? []));

const isSameJob = (one: TypedCell | null, other: TypedCell | null): boolean =>
  one === other ||
  (one !== null &&
    other !== null &&
    isSameValue(one.value, other.value) &&
    one.place?.row === other.place?.row);
