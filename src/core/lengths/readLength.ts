/** A cell to a length: the one door by which lengths come in. `lengthText.ts` has the forms it reads. */
import { cellText, type CellValue } from "../base/cell";
import { decimalOfNumber, powerOfTen } from "../base/decimal";
import { plainCharacters } from "../base/plainCharacters";
import { nearestNumber, rational, type Rational } from "../base/rational";
import { err, ok, type Result } from "../base/result";
import { longestText } from "../base/typedText";
import { typedBeforeSerial, typedBeforeText } from "./dateTyped";
import { doorRange, isPlausible, plausibleInstead, type PlausibleRange } from "./doorRange";
import { lengthIn, lengthLimit, type Length, type LengthUnit, type WrittenUnit } from "./length";
import { lengthDoubt, lengthFault, type LengthDoubt, type LengthFault } from "./lengthFindings";
import { readLengthText, type LengthText } from "./lengthText";
import { writeLength } from "./writeLength";

export type ReadLength = { readonly length: Length; readonly doubts: readonly LengthDoubt[] };

const none: readonly LengthDoubt[] = [];

/**
 * Reads one cell. A bare number, as a number or in a text, is in `unit`; a number counts as the
 * decimal a spreadsheet shows, to nine places. A length outside `range` is read with a doubt. Zero,
 * less than zero, a million of the unit and more, dates, errors, blanks and other text are faults. Any
 * value whatever is answered; none throws.
 */
export function readLength(
  value: CellValue,
  unit: LengthUnit,
  range: PlausibleRange = doorRange,
): Result<ReadLength, LengthFault> {
  if (typeof value === "string") return readText(value, unit, range);
  if (typeof value === "number") return readNumber(value, unit, range);
  const found = cellText(value);
  if (value === null) return err(lengthFault("length-blank", found));
  if (typeof value === "boolean") return err(lengthFault("length-not-text-or-number", found));
  if (value.kind === "error") return err(lengthFault("length-is-an-error", found));
  return err(lengthFault("length-is-a-date", found, 0, typedBeforeSerial(value.serial)));
}

function readNumber(
  value: number,
  unit: LengthUnit,
  range: PlausibleRange,
): Result<ReadLength, LengthFault> {
  const found = String(value);
  if (Number.isNaN(value)) return err(lengthFault("length-not-text-or-number", found));
  if (value < 0) return err(lengthFault("length-negative", found));
  const decimal = value < lengthLimit ? decimalOfNumber(value, 9) : null;
  if (decimal === null) return err(lengthFault("length-too-large", found));
  if (decimal.coefficient === 0) return err(lengthFault("length-zero", found));
  const amount = rational(decimal.coefficient, powerOfTen(decimal.places));
  const length = lengthIn(amount, unit);
  const doubt = rangeDoubt({ length, only: { amount, unit } }, found, range);
  return ok({ length, doubts: doubt === null ? none : [doubt] });
}

function readText(
  text: string,
  unit: LengthUnit,
  range: PlausibleRange,
): Result<ReadLength, LengthFault> {
  if (text.length > longestText) return err(lengthFault("length-text-too-long", text, longestText));
  const read = readLengthText(plainCharacters(text), unit);
  if (!read.ok) {
    const { code, at } = read.error;
    const date = typedBeforeText(text);
    if (date !== null) return err(lengthFault("length-is-a-date", text, at, date));
    return err(lengthFault(code, text, at));
  }
  const { length, only } = read.value;
  const doubt = rangeDoubt(read.value, text, range);
  if (doubt === null && read.value.doubts.length === 0) return ok({ length, doubts: none });
  const values = { read: asRead(length, only) };
  const doubts = read.value.doubts.map((code) => lengthDoubt(code, text, values));
  return ok({ length, doubts: doubt === null ? doubts : [...doubts, doubt] });
}

function rangeDoubt(
  { length, only }: Pick<LengthText, "length" | "only">,
  found: string,
  range: PlausibleRange,
): LengthDoubt | null {
  if (isPlausible(length, range)) return null;
  const instead = only === null ? [] : plausibleInstead(only.amount, only.unit, range);
  const style = { kind: "feet-inches", denominator: 64 } as const;
  return lengthDoubt("length-not-a-door", found, {
    read: asRead(length, only),
    least: writeLength(range.least, style),
    most: writeLength(range.most, style),
    hint:
      instead.length === 0
        ? "Check the number and its unit."
        : `If ${instead.join(" or ")} is meant, type the unit too.`,
  });
}

type OneUnit = { readonly amount: Rational; readonly unit: WrittenUnit } | null;

/** The length as it was understood: in the unit it was taken in, or in feet and inches. */
const asRead = (length: Length, only: OneUnit): string =>
  only === null
    ? writeLength(length, { kind: "feet-inches", denominator: 64 })
    : `${nearestNumber(only.amount)} ${only.unit}`;
