/** Short words for what a person typed on a hardware sheet. */
import { inches } from "../../../src/core/base/units";
import {
  nothingTyped,
  type Correction,
  type ReadRow,
  type ReadSheet,
  type TypedRow,
} from "../../../src/core/corrections/correction";
import { noRecord, type CorrectionRecord } from "../../../src/core/corrections/record";
import { readRowName, type RowName } from "../../../src/core/corrections/rowName";

/** The name of a row, such as `Crib | NUT |` or `Crib | #1`. */
export function named(text: string): RowName {
  const name = readRowName(text);
  if (name === null) throw new RangeError(`No name: ${text}`);
  return name;
}

export const typed = (cells: Partial<TypedRow> = {}): TypedRow => ({ ...nothingTyped, ...cells });

/** A correction of the row called `name`, with a reason and initials unless a test says otherwise. */
export const correction = (
  name: string,
  text: string,
  more: Partial<TypedRow> = {},
): Correction => ({
  name: named(name),
  typed: typed({ correction: text, reason: "bent", by: "AB", ...more }),
  counted: null,
});

/** A row of a sheet; a name of `null` is one that a person put in. */
export const readRow = (
  name: string | null,
  cells: Partial<TypedRow> = {},
  more: Partial<ReadRow> = {},
): ReadRow => ({
  name: name === null ? null : named(name),
  job: "Crib",
  typed: typed(cells),
  counted: null,
  place: { sheet: "Hardware Crib", row: 7, column: 4 },
  ...more,
});

export const sheet = (...rows: readonly ReadRow[]): ReadSheet => ({ subject: "Crib", rows });

/** A record as it is once `corrections` stand on the sheet of the job Crib. */
export const recordOf = (
  corrections: readonly Correction[],
  more: Partial<CorrectionRecord> = {},
): CorrectionRecord => ({
  ...noRecord,
  corrections,
  sheets: [
    {
      subject: "Crib",
      rows: corrections.map((each) => ({ name: each.name, typed: each.typed })),
      spares: {},
    },
  ],
  jobs: ["Crib"],
  ...more,
});

/** A line that is counted, without its counts. */
export const line = (item: string, quantity: number, ...size: readonly number[]) => ({
  item,
  size: size.map(inches),
  quantity,
});
