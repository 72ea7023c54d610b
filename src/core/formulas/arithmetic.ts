/** Arithmetic on numbers, and why a sum has no answer: OpenFormula 6.4 Standard Operators. */
import { errorAt, pieceOf, type Site } from "./coerce";
import {
  ceilingTo,
  floorTo,
  remainder,
  roundDown,
  roundHalfAway,
  roundUp,
  showFloor,
  showSame,
} from "./rounding";
import type { FormulaError } from "./value";

/**
 * A rule that makes one number of two finite ones. An answer that is not finite is no answer; `why`
 * then says so. Rules of one number pass the second by.
 */
export type NumberRule = {
  readonly apply: (left: number, right: number) => number;
  readonly why: (left: number, right: number, sites: RuleSites) => FormulaError;
};

/** Where the whole stands, and its second number. */
export type RuleSites = { readonly whole: Site; readonly right: Site };

const tooLarge = (_left: number, _right: number, { whole }: RuleSites): FormulaError =>
  errorAt(whole, "num", `${pieceOf(whole)} is too large a number.`);

const dividesByZero = ({ right }: RuleSites): FormulaError =>
  errorAt(right, "div0", `${pieceOf(right)} is 0, and nothing can be divided by 0.`);

const divisionFails: NumberRule["why"] = (left, right, sites) =>
  right === 0 ? dividesByZero(sites) : tooLarge(left, right, sites);

/**
 * A difference whose two numbers show the same 15 digits is 0, so that `a = b` and `a - b = 0` always
 * agree: 0.1 + 0.2 - 0.3 is 0 as a spreadsheet shows it, not 5.6E-17.
 */
export const difference = (left: number, right: number): number =>
  showSame(left, right) ? 0 : left - right;

/** A sum, with the care of `difference` where one number is below zero. */
export const sum = (left: number, right: number): number =>
  left < 0 === right < 0 ? left + right : difference(left, -right);

/** Adding 0 makes 0 of -0, which only `Object.is` can tell from it, and somebody's log will. */
export const product = (left: number, right: number): number => left * right + 0;

export const quotient = (left: number, right: number): number => left / right + 0;

/** 0^0 is an error, as in common spreadsheets; OpenFormula leaves it open. */
const power = (left: number, right: number): number =>
  left === 0 && right === 0 ? NaN : left ** right + 0;

function powerFails(left: number, right: number, sites: RuleSites): FormulaError {
  const { whole } = sites;
  if (left === 0 && right < 0) {
    return errorAt(whole, "div0", `${pieceOf(whole)} divides by 0.`);
  }
  return Number.isNaN(left ** right) || left === 0
    ? errorAt(whole, "num", `${pieceOf(whole)} is no number.`)
    : tooLarge(left, right, sites);
}

const stepFails: NumberRule["why"] = (_left, right, { whole, right: step }) =>
  right === 0
    ? errorAt(step, "div0", `The step of ${pieceOf(whole)} is 0.`)
    : errorAt(whole, "num", `${pieceOf(whole)}: the step is below 0 and the number is not.`);

export const numberRules = {
  "+": { apply: sum, why: tooLarge },
  "-": { apply: difference, why: tooLarge },
  "*": { apply: product, why: tooLarge },
  "/": { apply: quotient, why: divisionFails },
  "^": { apply: power, why: powerFails },
  ABS: { apply: (number) => Math.abs(number), why: tooLarge },
  INT: { apply: (number) => showFloor(number), why: tooLarge },
  MOD: { apply: remainder, why: divisionFails },
  ROUND: { apply: roundHalfAway, why: tooLarge },
  ROUNDUP: { apply: roundUp, why: tooLarge },
  ROUNDDOWN: { apply: roundDown, why: tooLarge },
  CEILING: { apply: ceilingTo, why: stepFails },
  FLOOR: { apply: floorTo, why: stepFails },
  MIN: { apply: (left, right) => Math.min(left, right), why: tooLarge },
  MAX: { apply: (left, right) => Math.max(left, right), why: tooLarge },
} as const satisfies Readonly<Record<string, NumberRule>>;

export type NumberRuleName = keyof typeof numberRules;
