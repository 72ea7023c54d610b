/** Percentages kept exactly, so that money worked out by them is exact too. */
import { decimalOfNumber, scanDecimal } from "../../base/decimal";
import { roundedProduct } from "../../base/exact";
import type { Cents } from "../../base/units";

declare const percentUnit: unique symbol;
/**
 * Whole millionths of the whole, of either sign: 12.5 % is 125,000. As the spreadsheet keeps it
 * (0.125 in a cell that shows 12.5%) it is `shareOf`.
 */
export type Percent = number & { readonly [percentUnit]: true };

/** The whole: 100 %. */
export const millionths = 1_000_000;

/** Whether something kept as data can be one. */
export const isPercentage = (value: unknown): value is Percent => Number.isSafeInteger(value);

/** @throws RangeError when `value` is not a whole number that a double holds exactly. */
export function percent(value: number): Percent {
  if (Number.isSafeInteger(value)) return value as Percent;
  throw new RangeError(`Not a percentage in millionths: ${value}`);
}

export const noPercent = percent(0);

/** What a spreadsheet's cell holds: 0.125 for 12.5 %. */
export const shareOf = (value: Percent): number => value / millionths;

/** The nearest percentage to a share such as 0.125. Asks for a finite share below a million. */
export const percentOfShare = (share: number): Percent => percent(Math.round(share * millionths));

/** As people say it: 12.5 for 12.5 %. */
export const inPercent = (value: Percent): number => value / (millionths / 100);

/** Such as `12.5 %`, with as many decimals as it takes, up to four. */
export const percentText = (value: Percent): string => `${inPercent(value)} %`;

/** What a typed percentage was read as; `doubt` says that the typed number could mean another. */
export type ReadPercent = { readonly percent: Percent; readonly doubt: boolean };

/**
 * Reads `12.5`, `12.5 %`, `12,5%` as 12.5 %, and a number as the spreadsheet keeps it: 0.125 is
 * 12.5 %. A number of 2 or more is read as so many percent, and doubted: a cell that was not set to
 * show percentages keeps a typed 25 as 25, and nobody means 2,500 %. Digits beyond the fourth decimal of a
 * percent are rounded off. `null` where it is no number.
 */
export function readPercent(typed: string | number): ReadPercent | null {
  if (typeof typed === "number") {
    const doubt = Math.abs(typed) >= 2;
    const decimal = decimalOfNumber(doubt ? typed / 100 : typed, 6);
    if (decimal === null) return null;
    return { percent: percent(decimal.coefficient * 10 ** (6 - decimal.places)), doubt };
  }
  const text = typed.normalize("NFKC").replaceAll("\u2212", "-").trim();
  const negative = text.startsWith("-");
  const scanned = scanDecimal(text, negative ? 1 : 0, 4);
  if (!scanned.ok || !/^\s*%?$/.test(text.slice(scanned.value.end))) return null;
  const size = scanned.value.coefficient * 10 ** (4 - scanned.value.places);
  return { percent: percent(negative ? -size : size), doubt: scanned.value.unsureMark !== null };
}

/**
 * `part / whole` in percent to `places` decimals, a half away from zero, such as `20.0`; exact, for
 * output. `null` where there is no whole.
 */
export const ratioText = (part: Cents, whole: Cents, places: number): string | null =>
  quotientText(part, whole, 100, places);

/** `part / whole` itself, such as `0.200000`, as `ratioText` is in percent. */
export const shareText = (part: Cents, whole: Cents, places: number): string | null =>
  quotientText(part, whole, 1, places);

function quotientText(part: Cents, whole: Cents, times: number, places: number): string | null {
  if (whole === 0) return null;
  const sign = whole < 0 ? -1 : 1;
  const scaled = roundedProduct(sign * part, times * 10 ** places, sign * whole);
  const digits = String(Math.abs(scaled)).padStart(places + 1, "0");
  const at = digits.length - places;
  const text = places === 0 ? digits : `${digits.slice(0, at)}.${digits.slice(at)}`;
  return scaled < 0 ? `-${text}` : text;
}
