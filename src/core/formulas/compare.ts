/**
 * The order of values: OpenFormula 6.4 Standard Operators, and where it leaves a choice what common
 * spreadsheets do. Numbers stand below texts, texts below FALSE and TRUE; texts compare without case;
 * numbers compare as they show, so that 0.1 + 0.2 = 0.3; a blank is 0, the empty text or FALSE,
 * whichever the other one is like.
 */
import { showSame } from "./rounding";
import type { Value } from "./value";

/** Below zero where `left` stands first, 0 where both are equal, above zero otherwise. */
export function compareValues(left: Value, right: Value): number {
  if (typeof left === "number" && typeof right === "number") return compareNumbers(left, right);
  const first = left ?? blankLike(right);
  const second = right ?? blankLike(left);
  if (typeof first === "string" && typeof second === "string") return compareTexts(first, second);
  if (typeof first === "number" && typeof second === "number") return compareNumbers(first, second);
  if (typeof first === typeof second) return Number(first) - Number(second);
  return rank(first) - rank(second);
}

const compareNumbers = (left: number, right: number): number =>
  showSame(left, right) ? 0 : left - right;

/** Small letters by code: the same order on every machine, unlike a locale's. */
function compareTexts(left: string, right: string): number {
  if (left === right) return 0;
  const first = left.toLowerCase();
  const second = right.toLowerCase();
  if (first === second) return 0;
  return first < second ? -1 : 1;
}

function blankLike(value: Value): string | number | boolean {
  if (typeof value === "string") return "";
  return typeof value === "boolean" ? false : 0;
}

function rank(value: string | number | boolean): number {
  if (typeof value === "number") return 0;
  return typeof value === "string" ? 1 : 2;
}
