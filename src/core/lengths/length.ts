/** Exact lengths: a length is a fraction of inches, so a millimetre is 5/127 and never 0.03937. */
import { multiplyRational, nearestNumber, rational, type Rational } from "../base/rational";
import { inches, type Inches } from "../base/units";

declare const exactInches: unique symbol;

/** Inches as an exact fraction in lowest terms. What the reader returns is above zero. */
export type Length = Rational & { readonly [exactInches]: true };

/** The units that can be typed behind a number. */
export const writtenUnits = ["ft", "in", "mm", "cm", "m"] as const;
export type WrittenUnit = (typeof writtenUnits)[number];

/** What a bare number means in a workbook. */
export type LengthUnit = "in" | "mm";

/** Numbers of any unit stop before this: below it every sum and product of a reading is exact. */
export const lengthLimit = 1_000_000;

/**
 * Inches in one of each unit, exactly. Source: 1 in = 25.4 mm, 1 ft = 0.3048 m (NIST SP 811,
 * appendix B.8, both exact).
 */
export const inchesPerUnit: Readonly<Record<WrittenUnit, Rational>> = {
  ft: rational(12),
  in: rational(1),
  mm: rational(5, 127),
  cm: rational(50, 127),
  m: rational(5000, 127),
};

/** `inches` said to be a length. */
export const lengthOf = (inches: Rational): Length => inches as Length;

/** So many of a unit. @throws RangeError when the product needs more than safe integers. */
export const lengthIn = (amount: Rational, unit: WrittenUnit): Length =>
  lengthOf(unit === "in" ? amount : multiplyRational(amount, inchesPerUnit[unit]));

/** The double nearest to the exact length: 1524 mm is 60 and nothing beside it. */
export const toInches = (length: Length): Inches => inches(nearestNumber(length));

/** Whether both are the same length exactly, whatever units they were typed in. */
export const sameLength = (a: Length, b: Length): boolean =>
  a.numerator === b.numerator && a.denominator === b.denominator;
