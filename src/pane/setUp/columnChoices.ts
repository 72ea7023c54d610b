/** The columns of a schedule as choices, and what choosing one writes into the settings. */
import { columnName } from "../../core/base/cell";
import type { ScheduleKey } from "../../core/openings/openingRow";
import { noColumn, type ScheduleMapping } from "../../tables/scheduleLayout";
import type { ScheduleReading } from "../../tables/scheduleTable";

export type ColumnChoice = {
  /** What the settings keep: the heading, or the column's letters where the heading does not tell. */
  readonly value: string;
  /** `D: Width`. */
  readonly label: string;
  /** Counted as in the reading. */
  readonly column: number;
};

/** Every column that has a heading, from left to right. */
export function columnChoices({
  columns,
  others,
  firstColumn,
}: Pick<ScheduleReading, "columns" | "others" | "firstColumn">): readonly ColumnChoice[] {
  const all = [...columns, ...others].sort((one, other) => one.column - other.column);
  const plain = (heading: string): string => heading.trim().toLowerCase();
  return all.map(({ column, heading }) => {
    const letters = columnName(firstColumn + column);
    const alike = all.filter((each) => plain(each.heading) === plain(heading)).length;
    const isTold = heading.trim() !== "" && alike === 1 && heading !== noColumn;
    return { value: isTold ? heading.trim() : letters, label: `${letters}: ${heading}`, column };
  });
}

/** The mapping with `key` set to a column; the empty text leaves it to be guessed again. */
export function withColumn(
  mapping: ScheduleMapping,
  key: ScheduleKey,
  value: string,
): ScheduleMapping {
  const others = Object.entries(mapping).filter(([each]) => each !== key);
  return Object.fromEntries(value === "" ? others : [...others, [key, value]]);
}
