/** An opening that is given by values instead of by a row of a schedule. */
import type { CellValue } from "../../core/base/cell";
import type { LengthUnit } from "../../core/lengths/length";
import { checkOpenings, type CheckedOpenings } from "../../core/openings/checkOpenings";
import type { ScheduleKey } from "../../core/openings/openingRow";

/** An opening by its values; a key that is absent is a column that the schedule does not have. */
export type GivenOpening = {
  readonly fields: Readonly<Partial<Record<ScheduleKey, CellValue>>>;
  /** Further fields by the name that formulas use. */
  readonly others: Readonly<Record<string, CellValue>>;
};

/** Checks the values as a row of a schedule is checked; job and mark need not be given. */
export function checkGivenOpening(
  { fields, others }: GivenOpening,
  types: readonly string[],
  unit: LengthUnit,
): CheckedOpenings {
  const place = { sheet: "", row: 0, column: 0 };
  const typed = (values: Readonly<Record<string, CellValue>>) =>
    Object.fromEntries(
      Object.entries(values).map(([name, value]) => [name, { value, place: null }]),
    );
  const schedule = {
    sheet: "",
    units: {},
    otherHeadings: Object.fromEntries(Object.keys(others).map((name) => [name, name])),
    rows: [
      {
        place,
        cells: typed({ job: "-", mark: "-", quantity: 1, ...fields }),
        others: typed(others),
      },
    ],
  };
  return checkOpenings(schedule, types, unit);
}
