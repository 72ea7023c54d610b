/** The numbers that can start at one place of a formula: `7`, `1/2`, `7 1/2`, `7½`, without a unit. */
import { fractionAt } from "../lengths/fraction";

export type Amount = {
  readonly start: number;
  readonly end: number;
  readonly value: number;
  /** The whole number before the gap of a mixed one; otherwise empty. */
  readonly whole: string;
  /** What stands between the whole number and its fraction; empty where it is not mixed. */
  readonly gap: string;
  /** The fraction as typed, such as `1/2` or `1 / 2`; empty where there is none. */
  readonly share: string;
  /** No fraction, or one whose top is smaller than its bottom. */
  readonly isProper: boolean;
};

export type Amounts = {
  /** `7 1/2`, or `7-1/2`, which may be a subtraction. */
  readonly mixed: Amount | undefined;
  /** `1/2`, which may be a division. */
  readonly fraction: Amount | undefined;
  /** The number up to there; always there where a number starts at all. */
  readonly single: Amount;
};

const decimal = /(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?/iy;
const withCharacter = /(\d*) *(?=[¼-¾⅐-⅞])/y;
const stroke = /(?:(\d+)( *- *| +))?((\d+) *\/ *(\d+))(?![\d.])/y;

/** What a sticky pattern finds at exactly `at`. */
export function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/** Whether a number starts at `at` of a plain text. */
export const startsAmount = (text: string, at: number): boolean =>
  matchAt(decimal, text, at) !== null || matchAt(withCharacter, text, at) !== null;

export function amountsAt(text: string, at: number): Amounts {
  const match = matchAt(stroke, text, at);
  const single = singleAt(text, at);
  if (match === null) return { mixed: undefined, fraction: undefined, single };
  const [written, whole = "", gap = "", share = "", top, bottom] = match;
  const ratio = Number(top) / Number(bottom);
  const amount: Amount = {
    start: at,
    end: at + written.length,
    value: Number(whole) + ratio,
    whole,
    gap,
    share,
    isProper: ratio < 1,
  };
  if (gap === "") return { mixed: undefined, fraction: amount, single };
  // A stroke with spaces is a division: 7 1 / 2 is nothing, and said to be so where it is met.
  return { mixed: share.includes(" ") ? undefined : amount, fraction: undefined, single };
}

function singleAt(text: string, start: number): Amount {
  const shape = { start, whole: "", gap: "", share: "", isProper: true };
  const before = matchAt(withCharacter, text, start);
  const share = before === null ? null : fractionAt(text, start + before[0].length);
  if (before !== null && share !== null) {
    return { ...shape, end: share.end, value: Number(before[1]) + share.top / share.bottom };
  }
  const written = matchAt(decimal, text, start)?.[0] ?? "";
  return { ...shape, end: start + written.length, value: Number(written) };
}
