/** Lengths as text, for people and for machines. */
import { decimalOfNumber, powerOfTen } from "../base/decimal";
import { greatestCommonDivisor, roundedProduct } from "../base/exact";
import { rational, type Rational } from "../base/rational";
import type { Inches } from "../base/units";
import { lengthLimit, type Length } from "./length";

/** The fractions of an inch that a tape shows. */
export const fractionDenominators = [1, 2, 4, 8, 16, 32, 64] as const;
export type FractionDenominator = (typeof fractionDenominators)[number];

/**
 * `feet-inches`: `7'-0 1/2"`, to the nearest of the chosen fraction. `inches`: `84.5"`, to four
 * decimals. `mm`: `2134 mm`, to one decimal. `number`: inches with no mark, to six decimals.
 */
export type LengthStyle =
  | { readonly kind: "feet-inches"; readonly denominator: FractionDenominator }
  | { readonly kind: "inches" | "mm" | "number" };

/** The style of machine output: `48`, and of a size `48 x 84`. */
export const numberStyle: LengthStyle = { kind: "number" };

const placesOf = { inches: 4, mm: 1, number: 6 } as const;

/**
 * The length in `style`, rounded once from its exact value, a tie away from zero. `Inches` count as
 * the decimal they show, to nine places. Fractions are reduced, and what rounds up to a whole inch
 * or foot is carried (11 63/64 in to sixteenths is `1'-0"`). Below a foot there are inches only
 * (`6 1/2"`), and zero is `0"`. A length below zero has a `-` in front. A million inches and more
 * are written as the number of inches, whatever the style.
 *
 * `readLength` reads back what this writes in the first three styles, from above zero to below a
 * million of the unit.
 */
export function writeLength(length: Length | Inches, style: LengthStyle): string {
  const exact = typeof length === "number" ? exactInches(length) : length;
  if (exact === null || Math.abs(exact.numerator / exact.denominator) >= lengthLimit) {
    return `${typeof length === "number" ? length : length.numerator / length.denominator}"`;
  }
  switch (style.kind) {
    case "feet-inches":
      return feetAndInches(exact, style.denominator);
    case "inches":
      return `${decimals(exact, 1, placesOf.inches)}"`;
    case "mm":
      return `${decimals(exact, 254, placesOf.mm, 10)} mm`;
    case "number":
      return decimals(exact, 1, placesOf.number);
  }
}

/** One length, or a width and a height: `4'-0" x 7'-0"`. No lengths are the empty text. */
export const writeSize = (lengths: readonly (Length | Inches)[], style: LengthStyle): string =>
  lengths.map((length) => writeLength(length, style)).join(" x ");

function exactInches(value: Inches): Rational | null {
  const decimal = Math.abs(value) < lengthLimit ? decimalOfNumber(value, 9) : null;
  return decimal === null ? null : rational(decimal.coefficient, powerOfTen(decimal.places));
}

function feetAndInches({ numerator, denominator }: Rational, fraction: number): string {
  const parts = roundedProduct(Math.abs(numerator), fraction, denominator);
  const sign = numerator < 0 && parts > 0 ? "-" : "";
  const feet = Math.floor(parts / (12 * fraction));
  const whole = Math.floor(parts / fraction) - 12 * feet;
  const top = parts % fraction;
  const common = greatestCommonDivisor(top, fraction);
  const small = top === 0 ? "" : `${top / common}/${fraction / common}`;
  // A fraction alone has no nought before it; behind feet it has, so that it reads 7'-0 1/2".
  const inchText = small === "" ? `${whole}` : whole > 0 || feet > 0 ? `${whole} ${small}` : small;
  return `${sign}${feet > 0 ? `${feet}'-` : ""}${inchText}"`;
}

/** `value` times `multiplier / divisor` to so many decimal places, with no zeros behind the last that counts. */
function decimals(
  { numerator, denominator }: Rational,
  multiplier: number,
  places: number,
  divisor = 1,
): string {
  const scale = powerOfTen(places);
  const scaled = roundedProduct(numerator, multiplier * scale, denominator * divisor);
  return String(scaled / scale);
}
