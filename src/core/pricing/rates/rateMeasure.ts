/**
 * A rate that is a weight, a load or a length: read in the unit typed with it, else in that of its
 * Unit cell, else in the core's own. What it says otherwise than its row is told, never guessed.
 */
import { cellText, type CellPlace, type CellValue, type TypedCell } from "../../base/cell";
import type { FindingTable } from "../../base/finding";
import { ownUnitOf, unitsOf, type MeasureKind } from "../../measures/measures";
import { readMeasure, readUnit, type ReadMeasure } from "../../measures/readMeasure";
import { groupedFigure } from "../../measures/writeMeasure";
import type { RateRow } from "./rateRow";

export const rateMeasureFindings = {
  "rate-unit-not-known": {
    level: "stop",
    says: "{label} is {found}, and {unit} is no unit for it: it may be {units}.",
    todo: "Type it in one of them. Until then the value is not used, and not taken for anything else.",
  },
  "rate-in-other-unit": {
    level: "note",
    says: "{label} is {found} in a row of {unit}; the cell's own unit counts, which makes it {read}.",
    todo: "Check that it is meant.",
  },
  "rate-comma": {
    level: "note",
    says: "{label} is {found}, which is read as {read}.",
    todo: "If the comma is a decimal one, type a point instead.",
  },
} as const satisfies FindingTable;

export type SaidOfMeasure = {
  readonly code: keyof typeof rateMeasureFindings;
  readonly values: Readonly<Record<string, string>>;
  /** The cell that it is about, where that is not the value's. */
  readonly place?: CellPlace | null;
};

/** The amount in the core's own unit; `not a number`; or `null` for a unit that is not known, which is said. */
export type RateMeasure = {
  readonly amount: number | "not a number" | null;
  readonly said: SaidOfMeasure | null;
};

/** `unit` is the row's Unit cell; `null` where it is blank or there is none. */
export function readRateMeasure(
  value: CellValue,
  kind: MeasureKind,
  unit: TypedCell | null,
): RateMeasure {
  const own = ownUnitOf(kind);
  const words = unit === null ? "" : cellText(unit.value).trim();
  const headed = unit === null ? own : readUnit(words, kind);
  const read = readMeasure(value, kind, headed ?? own);
  if (!read.ok) {
    return read.error.code === "unit-not-known"
      ? { amount: null, said: notKnown(read.error.unit, kind) }
      : { amount: "not a number", said: null };
  }
  const { amount, hasUnit, hasUnsureComma } = read.value;
  if (headed === null && !hasUnit) {
    return { amount: null, said: { ...notKnown(words, kind), place: unit?.place ?? null } };
  }
  const isOther = hasUnit && unit !== null && read.value.unit !== headed;
  const values = { unit: words, read: readWords(read.value, own.name) };
  if (hasUnsureComma) return { amount, said: { code: "rate-comma", values } };
  return { amount, said: isOther ? { code: "rate-in-other-unit", values } : null };
}

const notKnown = (unit: string, kind: MeasureKind): SaidOfMeasure => ({
  code: "rate-unit-not-known",
  values: { unit, units: unitsOf[kind].map(({ name }) => name).join(", ") },
});

/** Such as `551.156 lb`, or `1,250 kg (2,755.778 lb)` of a number in thousands. */
function readWords({ amount, typed, unit, hasUnsureComma }: ReadMeasure, own: string): string {
  const inOwn = `${groupedFigure(amount, 3)} ${own}`;
  if (!hasUnsureComma || unit.name === own) return inOwn;
  return `${groupedFigure(typed, 3)} ${unit.name} (${inOwn})`;
}

/**
 * What is wrong with the Unit cell of a freight rate, which is by the hundredweight of 100 lb and
 * would be another price by anything else; `null` where nothing is.
 */
export function freightUnitFault(row: RateRow, unit: TypedCell | null): SaidOfMeasure | null {
  if (row.isByHundredweight !== true || unit === null) return null;
  const words = cellText(unit.value).trim();
  if (/hundredweight|\bcwt\b|\b100 ?(lbs?|pounds)\b/i.test(words)) return null;
  return {
    code: "rate-unit-not-known",
    values: { unit: words, units: `${row.unit} (100 lb)` },
    place: unit.place,
  };
}
