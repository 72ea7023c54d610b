/** Whether a length can be a size of an opening, and which other unit would make it one. */
import { nearestNumber, type Rational } from "../base/rational";
import { inches, type Inches } from "../base/units";
import { lengthIn, toInches, writtenUnits, type Length, type WrittenUnit } from "./length";

/** Lengths from `least` to `most`, both included, raise no doubt. */
export type PlausibleRange = { readonly least: Inches; readonly most: Inches };

/**
 * One foot to 32 feet: from a small service window to a bi-parting opening of two of the widest
 * leaves. Metres, feet, and millimetres mistaken for inches fall outside. Common practice, no source.
 */
export const doorRange: PlausibleRange = { least: inches(12), most: inches(384) };

export const isPlausible = (length: Length, { least, most }: PlausibleRange): boolean => {
  const value = toInches(length);
  return value >= least && value <= most;
};

/** The same number in every unit but its own in which it would be in range: `7 ft`, `2134 mm`. */
export const plausibleInstead = (
  amount: Rational,
  unit: WrittenUnit,
  range: PlausibleRange,
): readonly string[] =>
  writtenUnits
    .filter((other) => other !== unit && isPlausible(lengthIn(amount, other), range))
    .map((other) => `${nearestNumber(amount)} ${other}`);
