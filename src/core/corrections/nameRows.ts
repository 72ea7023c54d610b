/** Rows of a hardware sheet whose name was lost, named again by what they show. */
import type { LengthUnit } from "../lengths/length";
import { readSize } from "../lengths/readSize";
import { pieceKey } from "../takeoff/partColumn";
import { jobKey, type Line } from "../takeoff/takeOff";
import { nothingTyped, type ReadRow, type ReadSheet } from "./correction";
import type { JobLines } from "./guessJob";
import { lineName } from "./rowName";

/** A size is shown to a sixteenth of an inch or finer: half of that and a little for rounding. */
const nearInches = 1 / 31;

/**
 * A row without a name that shows a count is a line of ours if its job has that item in about that
 * size; what it shows as item, size and quantity is then not typed. Any other row is left as it is.
 */
export function nameRows(
  sheets: readonly ReadSheet[],
  jobs: readonly JobLines[],
  unit: LengthUnit,
): readonly ReadSheet[] {
  if (!sheets.some(({ rows }) => rows.some(isNameless))) return sheets;
  const linesOf = new Map(jobs.map(({ job, lines }) => [jobKey(job), lines]));
  return sheets.map(({ subject, rows }) => ({
    subject,
    rows: rows.map((row) => {
      const line = isNameless(row)
        ? lineShown(row, linesOf.get(jobKey(row.job)) ?? [], unit)
        : null;
      if (line === null) return row;
      const { item, size, quantity } = nothingTyped;
      return {
        ...row,
        name: lineName(row.job, line),
        typed: { ...row.typed, item, size, quantity },
      };
    }),
  }));
}

const isNameless = ({ name, counted }: ReadRow): boolean => name === null && counted !== null;

function lineShown(
  { typed }: ReadRow,
  lines: JobLines["lines"],
  unit: LengthUnit,
): Pick<Line, "item" | "size"> | null {
  const read = readSize(typed.size, unit);
  if (!read.ok) return null;
  const size = read.value;
  const ofItem = lines.filter(
    (line) =>
      pieceKey(line.item, []) === pieceKey(typed.item, []) && line.size.length === size.length,
  );
  const far = (line: Pick<Line, "size">): number =>
    Math.max(0, ...line.size.map((length, index) => Math.abs(length - (size[index] ?? 0))));
  const [nearest] = ofItem.toSorted((one, other) => far(one) - far(other));
  return nearest !== undefined && far(nearest) <= nearInches ? nearest : null;
}
