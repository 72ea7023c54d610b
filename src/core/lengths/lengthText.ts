/**
 * A typed length, from its characters to exact inches.
 *
 * | typed | read as |
 * |---|---|
 * | `7'` `7 ft` `7' 6"` `7'-6 1/2"` `7'6` `7 ft. 6 in` | feet, or feet and inches |
 * | `84"` `84 in` `83-1/2"` `83 1/2"` `83½"` `1/2"` | inches |
 * | `2134 mm` `213,4 cm` `2.134 m` | metric |
 * | `84` | the workbook's unit |
 * | `83 1/2` `83-1/2` | inches: a number, then a fraction after a space or a dash |
 * | `7-0` `7-0 1/2` `7-6"` | feet and inches: two whole numbers with a dash between, the second below 12, a fraction behind it or not |
 *
 * So what stands behind a lone dash decides: a fraction makes inches of both (`7-1/2` is seven and a
 * half inches), a whole number makes feet of what is before it. Two whole numbers with only a space
 * between (`7 6`) are feet and inches too, with a doubt. In `2,134` the comma parts thousands of
 * millimetres and decimals of every other unit, with a doubt; a point is always a decimal point
 * where it stands alone. Decimals beyond the ninth are rounded off.
 */
import { skipSpaces } from "../base/plainCharacters";
import { addRational, multiplyRational, type Rational } from "../base/rational";
import { err, ok, type Result } from "../base/result";
import { inchesPerUnit, lengthIn, lengthLimit, lengthOf, type Length } from "./length";
import type { LengthUnit, WrittenUnit } from "./length";
import { readTerm, type LengthTerm, type Stop } from "./lengthTerm";
import type { LengthDoubtCode } from "./lengthFindings";

/** What a text says. */
export type LengthText = {
  readonly length: Length;
  /** The number and the unit it was taken in, where there was only one of each. */
  readonly only: { readonly amount: Rational; readonly unit: WrittenUnit } | null;
  readonly doubts: readonly Exclude<LengthDoubtCode, "length-not-a-door">[];
};

const secondLength = /[x×*@]|by\b/iy;

/** Reads a plain text (`plainCharacters`); a bare number is in `bareUnit`. */
export function readLengthText(text: string, bareUnit: LengthUnit): Result<LengthText, Stop> {
  const start = skipSpaces(text, 0);
  if (start === text.length) return err({ code: "length-blank", at: 0 });
  if (text.startsWith("-", start) && /^-[ .,]*\d/.test(text.slice(start))) {
    return err({ code: "length-negative", at: start });
  }
  const first = readTerm(text, start, bareUnit);
  if (!first.ok) return first;
  const rest = skipSpaces(text, first.value.end);
  const read = rest === text.length ? single(first.value, bareUnit) : pair(text, first.value, rest);
  if (!read.ok) return read;
  const { numerator, denominator } = read.value.length;
  if (numerator === 0) return err({ code: "length-zero", at: start });
  if (numerator / denominator >= lengthLimit) return err({ code: "length-too-large", at: start });
  return read;
}

const none: LengthText["doubts"] = [];

function single(term: LengthTerm, bareUnit: LengthUnit): Result<LengthText, Stop> {
  const { amount, hasFraction, hasUnsureComma } = term;
  const inchesForFraction = term.unit === null && hasFraction && bareUnit !== "in";
  const unit = term.unit ?? (hasFraction ? "in" : bareUnit);
  return ok({
    length: lengthIn(amount, unit),
    only: { amount, unit },
    doubts: inchesForFraction
      ? ["length-fraction-in-inches"]
      : hasUnsureComma
        ? ["length-comma"]
        : none,
  });
}

/** `first` and what follows it, which starts at `rest`. */
function pair(text: string, first: LengthTerm, rest: number): Result<LengthText, Stop> {
  const parted = /[-,]/.exec(text.charAt(rest))?.[0] ?? "";
  const secondStart = skipSpaces(text, rest + parted.length);
  const second = readTerm(text, secondStart, "in");
  if (!second.ok) {
    if (second.error.code !== "length-not-understood") return second;
    return err(stopAt(text, secondStart === text.length ? rest : second.error.at));
  }
  const { start, end, amount, unit } = second.value;
  const isMarked = first.unit === "ft";
  const isFeet = (isMarked || (first.unit === null && parted !== ",")) && first.isWhole;
  if (!isFeet || first.hasUnsureComma) return err(stopAt(text, rest));
  if (unit !== null && unit !== "in") return err({ code: "length-not-understood", at: start });
  const after = skipSpaces(text, end);
  if (after !== text.length) return err(stopAt(text, after));
  if (first.amount.numerator * 12 >= lengthLimit) {
    return err({ code: "length-too-large", at: first.start });
  }

  const isBelowAFoot = amount.numerator < 12 * amount.denominator;
  if (!isMarked && !isBelowAFoot) {
    const code = parted === "-" ? "length-inches-past-eleven" : "length-not-understood";
    return err({ code, at: start });
  }
  return ok({
    length: lengthOf(addRational(multiplyRational(first.amount, inchesPerUnit.ft), amount)),
    only: null,
    doubts: !isBelowAFoot
      ? ["length-many-inches"]
      : !isMarked && parted === ""
        ? ["length-feet-guessed"]
        : second.value.hasUnsureComma
          ? ["length-comma"]
          : none,
  });
}

/** A second length, as in `4'-0" x 7'-0"`, has a code of its own. */
function stopAt(text: string, at: number): Stop {
  secondLength.lastIndex = at;
  return { code: secondLength.test(text) ? "length-is-two" : "length-not-understood", at };
}
