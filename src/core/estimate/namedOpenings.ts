/** The openings of a job that a text names, by their marks or their types. */
import { cellText, isBlank, type TypedCell } from "../base/cell";
import { typeKey } from "../kitbook/kitBook";
import type { OpeningRow } from "../openings/openingRow";
import type { JobEstimate } from "./jobEstimate";
import { scheduleRowKey, type JobRow } from "./recountJob";

export type NamedOpenings = {
  readonly isIn: (row: OpeningRow) => boolean;
  /** Whether no row is named. */
  readonly isNone: boolean;
  /** What names no opening of the job. */
  readonly unknown: readonly string[];
  /** Every mark and type of the job. */
  readonly known: readonly string[];
};

/** A blank names every opening. A mark that has a comma in it can be named alone. */
export function namedOpenings(
  cell: TypedCell,
  { takeOff }: Pick<JobEstimate, "takeOff">,
  rows: readonly JobRow[],
): NamedOpenings {
  const typeOf = new Map(
    takeOff.openings.map((opening) => [scheduleRowKey(opening), opening.type]),
  );
  const markOf = ({ cells }: OpeningRow): string => textOf(cells.mark);
  const typesOf = (row: OpeningRow): readonly string[] => [
    typeOf.get(scheduleRowKey(row)) ?? textOf(row.cells.type),
    textOf(row.cells.type),
  ];
  const marks = rows.map(({ row }) => markOf(row));
  const types = rows.flatMap(({ row }) => typesOf(row));
  const known = [...new Set([...marks, ...types])].filter((name) => name !== "");
  if (isBlank(cell.value)) {
    return { isIn: () => true, isNone: rows.length === 0, unknown: [], known };
  }
  const markKeys = new Set(marks.map(markKey));
  const typeKeys = new Set(types.map(typeKey));
  const isKnown = (name: string): boolean =>
    markKeys.has(markKey(name)) || (typeKey(name) !== "" && typeKeys.has(typeKey(name)));
  const whole = cellText(cell.value).trim();
  const wanted = isKnown(whole)
    ? [whole]
    : whole
        .split(/[,;\n]/)
        .map((name) => name.trim())
        .filter((name) => name !== "");
  const wantedMarks = new Set(wanted.map(markKey));
  const wantedTypes = new Set(wanted.map(typeKey));
  wantedTypes.delete("");
  const isIn = (row: OpeningRow): boolean =>
    wantedMarks.has(markKey(markOf(row))) ||
    typesOf(row).some((type) => wantedTypes.has(typeKey(type)));
  return {
    isIn,
    isNone: !rows.some(({ row }) => isIn(row)),
    unknown: wanted.filter((name) => !isKnown(name)),
    known,
  };
}

/** Marks are told apart as a job's are: in any case. */
const markKey = (mark: string): string => mark.trim().toLowerCase();

const textOf = (cell: TypedCell | undefined): string =>
  cell === undefined ? "" : cellText(cell.value).trim();
