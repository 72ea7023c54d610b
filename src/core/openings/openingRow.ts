/** Rows of a schedule as a person typed them: nothing is checked yet. */
import type { CellPlace, TypedCell } from "../base/cell";
import type { StandardFieldName } from "../kitbook/fields";

/** The columns that a schedule can have; a further column is a field of the firm's own. */
export type ScheduleKey = StandardFieldName;

/** The unit of bare numbers in one column, where its heading says it; `null` for the workbook's. */
export type ColumnUnit = "in" | "mm" | "ft" | null;

export type OpeningRow = {
  /** The row's first cell. */
  readonly place: CellPlace;
  /** A key is absent where the schedule has no such column. */
  readonly cells: Readonly<Partial<Record<ScheduleKey, TypedCell>>>;
  /** Further columns by the name that formulas use. */
  readonly others: Readonly<Record<string, TypedCell>>;
};

/** A schedule with its columns recognised. */
export type Schedule = {
  readonly sheet: string;
  readonly units: Readonly<Partial<Record<ScheduleKey, ColumnUnit>>>;
  /** Headings of the further columns, by the name that formulas use. */
  readonly otherHeadings: Readonly<Record<string, string>>;
  readonly rows: readonly OpeningRow[];
};
