/** The closures a formula is made of: how they read, and how they combine numbers. */
import type { NumberRule, RuleSites } from "./arithmetic";
import { asNumber, type Site } from "./coerce";
import type { FormulaColumns, FormulaValue } from "./value";

/** The value of a part of a formula for one row. */
export type Evaluator = (columns: FormulaColumns, row: number) => FormulaValue;

/** A part of a formula ready to run. */
export type Part = {
  readonly run: Evaluator;
  /** Its value where it is the same for every row. */
  readonly constant: FormulaValue | undefined;
  /** The column it is, where it is a name and nothing more, and may be read directly. */
  readonly slot: number | undefined;
  readonly site: Site;
};

/** A cell beyond the end of its column is blank. */
export const readCell = (columns: FormulaColumns, slot: number, row: number): FormulaValue =>
  columns[slot]?.[row] ?? null;

/**
 * Makes the second, slower half of a combination of two numbers: at least one of the two is no number
 * yet, or their combination is none. The first half stands in the closures themselves, where the
 * engine can keep it to a few instructions.
 */
export const slowly =
  (rule: NumberRule, sites: RuleSites, leftSite: Site) =>
  (left: FormulaValue, right: FormulaValue): FormulaValue => {
    const first = asNumber(left, leftSite);
    if (typeof first === "object") return first;
    const second = asNumber(right, sites.right);
    if (typeof second === "object") return second;
    const answer = rule.apply(first, second);
    return Number.isFinite(answer) ? answer : rule.why(first, second, sites);
  };

export type SlowHalf = ReturnType<typeof slowly>;
