/**
 * Decimal numbers as people type them, kept exactly.
 *
 * Both marks are read both ways: `1,234.5`, `1.234,5`, `2 134`, `213,4`, `.5`. One mark alone with
 * exactly three digits behind it and one to three before it (`2,134`) can be either: it is read as
 * a decimal mark and reported, and the caller, who knows the unit or the currency, decides.
 */
import { skipDigits } from "./plainCharacters";
import { err, ok, type Result } from "./result";

/** Exactly `coefficient / 10 ^ places`. */
export type Decimal = {
  /** A safe integer. */
  readonly coefficient: number;
  readonly places: number;
  /** Whether digits beyond the places that were asked for were rounded off. */
  readonly rounded: boolean;
};

/** A decimal found in a text. */
export type ScannedDecimal = Decimal & {
  /** Where the text goes on after it. */
  readonly end: number;
  /** The mark that could as well part thousands; `asThousands` gives that reading. */
  readonly unsureMark: "." | "," | null;
};

/** `none`: no number starts there. `too-large`: more digits before the decimal mark than can be held. */
export type DecimalFault = "none" | "too-large";

/** Digits held in all: fifteen decimal digits always fit a double exactly. */
const mostDigits = 15;

const powersOfTen: readonly number[] = Array.from({ length: mostDigits + 1 }, (_, n) => 10 ** n);

/** `10 ^ exponent` for a whole exponent from zero up, exact up to fifteen and quicker than `**`. */
export const powerOfTen = (exponent: number): number => powersOfTen[exponent] ?? 10 ** exponent;

// A space parts thousands only before exactly three digits that are no numerator of a fraction.
const grouped = /(\d{1,3}(?:([ ,.])\d{3})(?:\2\d{3})*)(?!\d| *\/)(?:(?!\2)[.,](\d+))?/y;
const plain = /(\d*)[.,](\d+)|(\d+)\.?/y;

/**
 * The number that starts at `start`, to `places` decimal places (a tie goes up), with as many digits
 * before the mark as make fifteen in all. A sign is not part of it. Only ASCII digits, marks and
 * spaces count; the caller has made other forms plain.
 */
export function scanDecimal(
  text: string,
  start: number,
  places: number,
): Result<ScannedDecimal, DecimalFault> {
  const wholeEnd = skipDigits(text, start);
  if (wholeEnd > start && !mayGoOn(text, wholeEnd)) {
    return scanned(text.slice(start, wholeEnd), "", places, wholeEnd, null);
  }
  grouped.lastIndex = start;
  const inGroups = grouped.exec(text);
  if (inGroups !== null) {
    const [, groups = "", mark = "", decimals = ""] = inGroups;
    const [head = "", ...rest] = groups.split(mark);
    const end = grouped.lastIndex;
    if (decimals !== "" || rest.length > 1 || (mark !== "." && mark !== ",")) {
      return scanned(head + rest.join(""), decimals, places, end, null);
    }
    return scanned(head, rest.join(""), places, end, head.startsWith("0") ? null : mark);
  }
  plain.lastIndex = start;
  const match = plain.exec(text);
  if (match === null) return err("none");
  return scanned(match[1] ?? match[3] ?? "", match[2] ?? "", places, plain.lastIndex, null);
}

/**
 * The other reading of a decimal with an unsure mark: `2,134` as two thousand one hundred and
 * thirty-four. Asks that the decimal was scanned to three places or more.
 */
export const asThousands = ({ coefficient }: Decimal): Decimal => ({
  coefficient,
  places: 0,
  rounded: false,
});

/** Whether a mark, or a space that may part thousands, stands at `at`. */
function mayGoOn(text: string, at: number): boolean {
  const mark = text.charAt(at);
  return mark === "." || mark === "," || (mark === " " && skipDigits(text, at + 1) === at + 4);
}

function scanned(
  whole: string,
  decimals: string,
  places: number,
  end: number,
  unsureMark: ScannedDecimal["unsureMark"],
): Result<ScannedDecimal, DecimalFault> {
  const wholeNumber = Number(whole);
  if (wholeNumber >= powerOfTen(mostDigits - places)) return err("too-large");
  if (decimals === "") {
    return ok({ coefficient: wholeNumber, places: 0, rounded: false, end, unsureMark });
  }
  const kept = decimals.slice(0, places);
  const up = decimals.length > places && decimals.charAt(places) >= "5" ? 1 : 0;
  return ok({
    coefficient: Number(whole + kept) + up,
    places: kept.length,
    rounded: /[1-9]/.test(decimals.slice(places)),
    end,
    unsureMark,
  });
}

/**
 * The number as a spreadsheet shows it, to fifteen significant digits and then to `places` decimal
 * places, a tie away from zero: `84.00000000000001` is 84. `null` when it is not finite or has more
 * digits before the mark than make fifteen with the places.
 */
export function decimalOfNumber(value: number, places: number): Decimal | null {
  if (!(Math.abs(value) < powerOfTen(mostDigits - places))) return null;
  if (Number.isInteger(value)) {
    return { coefficient: value === 0 ? 0 : value, places: 0, rounded: false };
  }
  const shown = Number(Math.abs(value * powerOfTen(places)).toPrecision(mostDigits));
  const coefficient = Math.round(shown);
  return {
    coefficient: value < 0 && coefficient > 0 ? -coefficient : coefficient,
    places,
    rounded: coefficient !== shown,
  };
}
