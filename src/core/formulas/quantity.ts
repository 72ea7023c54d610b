/**
 * Numbers and lengths as they stand in a formula.
 *
 * A number alone (`2`, `0.5`, `1e3`) has no unit. A length is a number with a mark and is worth its
 * inches:
 * - feet `5'` `5 ft`, inches `60"` `60 in`, both `5'-6"` `5' 6"` `6'-11-1/2"`, `5 ft 6 in`;
 * - fractions, written without spaces around the stroke: `1/2"` `1 1/2"` `7½"` `3/4 ft`;
 * - `1524 mm`, `152.4 cm`, `1.5 m`.
 * An inch mark follows its number directly; anywhere else a `"` opens a text. Only a run of characters
 * that ends in a mark is a length, so `3/4` is a division and `1/2"` is half an inch.
 *
 * What could be a length or a subtraction is refused, with both ways to write it: `7'-6` (the mark is
 * missing, or 6 is taken off), `7' - 6"`, and `3-1/2"` (which is three and a half in the trade, and
 * two and a half by arithmetic). `leaf_width - 2"` and `84 - 1/2"` are plain subtractions.
 */
import type { Rational } from "../base/rational";
import { err, ok, type Result } from "../base/result";
import { inchesPerUnit } from "../lengths/length";
import { numberText } from "./coerce";
import { formulaFault, type FormulaFault } from "./findings";
import { amountsAt, matchAt, type Amount } from "./amount";
import { snapped } from "./rounding";

/** A number or length that ends before the character `end`. */
export type Quantity = { readonly value: number; readonly isLength: boolean; readonly end: number };

type Read<T = Quantity> = Result<T, FormulaFault>;

/**
 * The number or length that starts at `at` of a plain text (`plainCharacters`), where a digit or a
 * point with a digit stands. `operatorBefore` is the operator directly before it, or the empty text:
 * after `/` and `^` a fraction could belong to either side.
 */
export function readQuantity(text: string, at: number, operatorBefore: string): Read {
  const read = quantityAt(text, at, operatorBefore);
  if (!read.ok || Number.isFinite(read.value.value)) return read;
  return err(formulaFault("formula-number", at, text.slice(at, read.value.end)));
}

function quantityAt(text: string, at: number, operatorBefore: string): Read {
  const { mixed, fraction, single } = amountsAt(text, at);
  return (
    (mixed && readMixed(text, mixed)) ??
    (fraction && readFraction(text, fraction, operatorBefore)) ??
    readSingle(text, single)
  );
}

/** A unit behind an amount: inches in one of it, and where its mark ends. */
type Unit = { readonly inches: Rational; readonly isFeet: boolean; readonly end: number };

const nameGoesOn = String.raw`(?![\p{L}\p{N}\p{M}_])`;
const inchMark = new RegExp(String.raw`"|''| *(?:inches|inch|in)${nameGoesOn}\.?`, "iuy");
const feetMark = new RegExp(String.raw` *(?:'|(?:feet|foot|ft)${nameGoesOn}\.?)`, "iuy");
const metricMark = new RegExp(String.raw` *(mm|cm|m)${nameGoesOn}`, "iuy");

function unitAt(text: string, at: number): Unit | undefined {
  const inch = matchAt(inchMark, text, at);
  if (inch !== null) {
    return { inches: inchesPerUnit.in, isFeet: false, end: at + inch[0].length };
  }
  const feet = matchAt(feetMark, text, at);
  if (feet !== null) return { inches: inchesPerUnit.ft, isFeet: true, end: at + feet[0].length };
  const metric = matchAt(metricMark, text, at);
  if (metric === null) return undefined;
  const unit = metric[1]?.toLowerCase();
  const inches = inchesPerUnit[unit === "cm" || unit === "m" ? unit : "mm"];
  return { inches, isFeet: false, end: at + metric[0].length };
}

/**
 * 2.134 m is 2134 mm, and 5.1' is 61.2", although no double is 2.134 or 5.1: a product next to a short
 * decimal is that decimal, before the division by 127 that makes inches of millimetres.
 */
function inInches(amount: number, { numerator, denominator }: Rational): number {
  const product = amount * numerator;
  const decimal = snapped(product);
  const isNext = Math.abs(product - decimal) <= product * 2 * Number.EPSILON;
  return (isNext ? decimal : product) / denominator;
}

const lengthOf = (amount: number, unit: Unit): Read =>
  ok({ value: inInches(amount, unit.inches), isLength: true, end: unit.end });

/** `1 1/2"`; `undefined` where it is a subtraction. */
function readMixed(text: string, amount: Amount): Read | undefined {
  const { start, end, gap } = amount;
  const unit = unitAt(text, end);
  const isDashed = gap.includes("-");
  if (unit === undefined) {
    if (isDashed) return undefined;
    const piece = text.slice(start, end);
    return unclear(start, piece, "a whole number and a fraction need a mark", `${piece}"`);
  }
  if (isDashed && gap.startsWith(" ") && gap.endsWith(" ")) return undefined;
  if (isDashed) {
    const [whole, share] = [amount.whole, text.slice(end - amount.share.length, unit.end)];
    return ambiguous(text, start, unit.end, {
      one: `${whole} ${share}`,
      oneMeans: "one length",
      other: `${whole} - ${share}`,
      otherMeans: "a subtraction",
    });
  }
  return amount.isProper ? lengthOf(amount.value, unit) : improper(text, start, unit.end);
}

const endOfFactor = / *[\^%]/y;

/** `1/2"`; `undefined` where it is a plain division. */
function readFraction(text: string, amount: Amount, operatorBefore: string): Read | undefined {
  const { start, end, share } = amount;
  const unit = unitAt(text, end);
  if (unit === undefined) return undefined;
  const [top = "", bottom = ""] = share.split("/").map((part) => part.trim());
  const mark = text.slice(end, unit.end);
  if (!amount.isProper || share.includes(" ")) {
    // 10 / 2" and ten halves of an inch are one number; with any other unit they are not.
    if (unit.inches === inchesPerUnit.in) return undefined;
    return ambiguous(text, start, unit.end, {
      one: `${top} / (${bottom}${mark})`,
      oneMeans: "a division by a length",
      other: `(${top} / ${bottom}) * (1${mark})`,
      otherMeans: "that many of the unit",
    });
  }
  const isBetween = operatorBefore === "/" || operatorBefore === "^";
  if (isBetween || matchAt(endOfFactor, text, unit.end) !== null) {
    return ambiguous(text, start, unit.end, {
      one: `(${share}${mark})`,
      oneMeans: "one length",
      other: `${top} / (${bottom}${mark})`,
      otherMeans: "a division",
    });
  }
  return lengthOf(amount.value, unit);
}

function readSingle(text: string, amount: Amount): Read {
  const unit = unitAt(text, amount.end);
  if (unit === undefined) return ok({ value: amount.value, isLength: false, end: amount.end });
  return unit.isFeet ? readFeet(text, amount, unit) : lengthOf(amount.value, unit);
}

const afterFeet = /( *)(-?)( *)(?=\.?\d|[¼-¾⅐-⅞])/y;

/** Feet, with the inches that belong to them. */
function readFeet(text: string, feet: Amount, mark: Unit): Read {
  const alone = lengthOf(feet.value, mark);
  const gap = matchAt(afterFeet, text, mark.end);
  if (gap === null) return alone;
  const [skipped, before, dash, after] = gap;
  const inches = inchesAt(text, mark.end + skipped.length);
  const piece = text.slice(feet.start, inches.end);
  const written = text.slice(feet.start, mark.end);
  const amount = text.slice(inches.start, inches.end);
  if (dash === "-" && !(inches.isMarked && before === "" && after === "")) {
    if (!inches.isMarked && unitAt(text, inches.end) !== undefined) return alone;
    return ambiguous(text, feet.start, inches.end, {
      one: `${written}-${amount}${inches.isMarked ? "" : '"'}`,
      oneMeans: "one length",
      other: `${written} - (${amount}${!inches.isMarked && inches.gap !== "" ? '"' : ""})`,
      otherMeans: "a subtraction",
    });
  }
  if (!inches.isMarked) {
    const one = `${written}-${amount}"`;
    return unclear(feet.start, piece, "inches after feet need their own mark", one);
  }
  if (!inches.isProper) return improper(text, feet.start, inches.end);
  const total = inInches(feet.value, mark.inches) + inches.value;
  if (inches.value >= 12) {
    const why = "inches beside feet must be below 12";
    return unclear(feet.start, piece, why, `${numberText(total)}"`);
  }
  if (!Number.isInteger(feet.value)) {
    const why = "feet beside inches must be whole";
    return unclear(feet.start, piece, why, `${numberText(total)}"`);
  }
  return ok({ value: total, isLength: true, end: inches.end });
}

/** The longest amount at `at` that ends in an inch mark, with its mark; the longest if none does. */
function inchesAt(text: string, at: number): Amount & { readonly isMarked: boolean } {
  const { mixed, fraction, single } = amountsAt(text, at);
  const whole = [mixed, fraction].filter(isOneNumber);
  for (const amount of [...whole, single]) {
    const mark = matchAt(inchMark, text, amount.end);
    if (mark !== null) return { ...amount, end: amount.end + mark[0].length, isMarked: true };
  }
  const unmarked = whole.find(({ gap }) => !gap.includes("-")) ?? single;
  return { ...unmarked, isMarked: false };
}

/** Written without spaces where a minus sign or a division would have them. */
const isOneNumber = (amount: Amount | undefined): amount is Amount =>
  amount !== undefined && !/ -|- /.test(amount.gap) && !amount.share.includes(" ");

type Refused = { readonly ok: false; readonly error: FormulaFault };

function improper(text: string, start: number, end: number): Refused {
  const why = "a fraction's top must be smaller than its bottom";
  return unclear(start, text.slice(start, end), why, '1 1/2" or 1.5"');
}

const ambiguous = (
  text: string,
  start: number,
  end: number,
  ways: Readonly<Record<"one" | "oneMeans" | "other" | "otherMeans", string>>,
): Refused => ({
  ok: false,
  error: formulaFault("formula-length-ambiguous", start, text.slice(start, end), ways),
});

const unclear = (start: number, piece: string, why: string, one: string): Refused => ({
  ok: false,
  error: formulaFault("formula-length-unclear", start, piece, { why, one }),
});
