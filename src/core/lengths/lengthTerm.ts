/** One number with its unit inside a typed length: `7'`, `11 1/2"`, `0-1/2`, `2,134 mm`, `½`. */
import { asThousands, powerOfTen, scanDecimal } from "../base/decimal";
import { skipLetters, skipSpaces } from "../base/plainCharacters";
import { addRational, rational, type Rational } from "../base/rational";
import { err, ok, type Result } from "../base/result";
import type { WrittenUnit } from "./length";
import type { LengthFaultCode } from "./lengthFindings";
import { fractionAt } from "./fraction";

export type LengthTerm = {
  readonly start: number;
  readonly end: number;
  readonly amount: Rational;
  /** As typed; `null` where the number is bare. */
  readonly unit: WrittenUnit | null;
  /** Neither decimals nor a fraction. */
  readonly isWhole: boolean;
  readonly hasFraction: boolean;
  /** Its comma could part thousands or decimals; the unit decided. */
  readonly hasUnsureComma: boolean;
};

/** Where a text stops making sense, and why. */
export type Stop = { readonly code: LengthFaultCode; readonly at: number };

/** A billionth of the unit; what lies beyond is rounded off. */
const places = 9;

const unitWords: ReadonlyMap<string, WrittenUnit> = new Map([
  ["'", "ft"],
  ["ft", "ft"],
  ["foot", "ft"],
  ["feet", "ft"],
  ['"', "in"],
  ["''", "in"],
  ["in", "in"],
  ["ins", "in"],
  ["inch", "in"],
  ["inches", "in"],
  ["mm", "mm"],
  ["millimeter", "mm"],
  ["millimeters", "mm"],
  ["millimetre", "mm"],
  ["millimetres", "mm"],
  ["cm", "cm"],
  ["centimeter", "cm"],
  ["centimeters", "cm"],
  ["centimetre", "cm"],
  ["centimetres", "cm"],
  ["m", "m"],
  ["meter", "m"],
  ["meters", "m"],
  ["metre", "m"],
  ["metres", "m"],
]);

const dash = 45;
const dot = 46;

/**
 * The term that starts at `start` of a plain text (`plainCharacters`). A bare number is taken as
 * `bareUnit` only to decide an unsure comma: it parts thousands of millimetres, and decimals of
 * every other unit.
 */
export function readTerm(
  text: string,
  start: number,
  bareUnit: WrittenUnit,
): Result<LengthTerm, Stop> {
  const lone = fractionAt(text, start);
  if (lone !== null) {
    const { unit, end } = unitAt(text, lone.end);
    const amount = rational(lone.top, lone.bottom);
    return ok({
      start,
      end,
      amount,
      unit,
      isWhole: false,
      hasFraction: true,
      hasUnsureComma: false,
    });
  }

  const number = scanDecimal(text, start, places);
  if (!number.ok) {
    const code = number.error === "none" ? "length-not-understood" : "length-too-large";
    return err({ code, at: start });
  }
  let { unit, end } = unitAt(text, number.value.end);
  let fraction = null;
  if (unit === null || unit === "in") {
    // Some write the inch mark before the fraction: 7'-0" 1/2.
    const fractionStart = skipDash(text, end);
    fraction = fractionAt(text, fractionStart);
    if (fraction !== null) {
      if (number.value.places > 0) return err({ code: "length-not-understood", at: fractionStart });
      if (fraction.top >= fraction.bottom) {
        return err({ code: "length-not-a-fraction", at: fractionStart });
      }
      const after = unitAt(text, fraction.end);
      end = after.end;
      unit ??= after.unit;
    }
  }

  const comma = number.value.unsureMark === ",";
  const thousands = comma && (unit ?? bareUnit) === "mm";
  const { coefficient, places: kept } = thousands ? asThousands(number.value) : number.value;
  const whole = rational(coefficient, powerOfTen(kept));
  return ok({
    start,
    end,
    amount: fraction === null ? whole : addRational(whole, rational(fraction.top, fraction.bottom)),
    unit,
    isWhole: fraction === null && whole.denominator === 1,
    hasFraction: fraction !== null,
    hasUnsureComma: comma,
  });
}

/** Past spaces with one dash among them, or none. */
function skipDash(text: string, at: number): number {
  const gap = skipSpaces(text, at);
  return text.charCodeAt(gap) === dash ? skipSpaces(text, gap + 1) : gap;
}

/** The unit behind a number, with the spaces before it and the full stop of an abbreviation. */
function unitAt(text: string, after: number): { unit: WrittenUnit | null; end: number } {
  const start = skipSpaces(text, after);
  const lettersEnd = skipLetters(text, start);
  const isWord = lettersEnd > start;
  const end = isWord ? lettersEnd : start + (text.startsWith("''", start) ? 2 : 1);
  const unit = unitWords.get(text.slice(start, end).toLowerCase());
  if (unit === undefined) return { unit: null, end: after };
  return { unit, end: isWord && text.charCodeAt(end) === dot ? end + 1 : end };
}
