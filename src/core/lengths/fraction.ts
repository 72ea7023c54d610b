/** A fraction in a plain text: `1/2`, `11 / 16`, `½`. */
import { skipDigits, skipSpaces } from "../base/plainCharacters";

/** `bottom` is above zero. */
export type Fraction = { readonly top: number; readonly bottom: number; readonly end: number };

/** Numerator and denominator of each single-character fraction (Unicode, Number Forms). */
const fractionCharacters: ReadonlyMap<string, readonly [number, number]> = new Map([
  ["½", [1, 2]],
  ["⅓", [1, 3]],
  ["⅔", [2, 3]],
  ["¼", [1, 4]],
  ["¾", [3, 4]],
  ["⅕", [1, 5]],
  ["⅖", [2, 5]],
  ["⅗", [3, 5]],
  ["⅘", [4, 5]],
  ["⅙", [1, 6]],
  ["⅚", [5, 6]],
  ["⅐", [1, 7]],
  ["⅛", [1, 8]],
  ["⅜", [3, 8]],
  ["⅝", [5, 8]],
  ["⅞", [7, 8]],
  ["⅑", [1, 9]],
  ["⅒", [1, 10]],
]);

const mostDigits = 6;
const slash = 47;

/**
 * The fraction that starts at `start`, or `null` where none does. Over zero, or with more digits than
 * six above or below the line, it is none.
 */
export function fractionAt(text: string, start: number): Fraction | null {
  const topEnd = skipDigits(text, start);
  if (topEnd === start) {
    const single = fractionCharacters.get(text.charAt(start));
    return single === undefined ? null : { top: single[0], bottom: single[1], end: start + 1 };
  }
  const line = skipSpaces(text, topEnd);
  if (text.charCodeAt(line) !== slash) return null;
  const bottomStart = skipSpaces(text, line + 1);
  const end = skipDigits(text, bottomStart);
  if (topEnd - start > mostDigits || end - bottomStart > mostDigits) return null;
  const bottom = Number(text.slice(bottomStart, end));
  return bottom === 0 ? null : { top: Number(text.slice(start, topEnd)), bottom, end };
}
