/** The closures a formula is made of: how they read, and how they combine numbers. */
import type { NumberRule, RuleSites } from "./arithmetic";
import { asNumber, type Site } from "./coerce";
import type { FormulaColumns, FormulaValue } from "./value";

/** The value of a part of a formula for one row. */
export type Evaluator = (columns: FormulaColumns, row: number) => FormulaValue;

/**
 * A part of a formula ready to run. Every part has these five fields, so that the engine sees one
 * layout; `partOf`, `fixedPart` and `cellPart` make them.
 */
export type Part = {
  readonly run: Evaluator;
  /** Whether its value is the same for every row, and then the value. */
  readonly isFixed: boolean;
  readonly fixed: FormulaValue;
  /** The column it is, where it is a name and nothing more, and may be read directly; otherwise -1. */
  readonly slot: number;
  readonly site: Site;
};

export const runPart = (run: Evaluator, site: Site): Part => ({
  run,
  isFixed: false,
  fixed: null,
  slot: -1,
  site,
});

export const fixedPart = (fixed: FormulaValue, site: Site): Part => ({
  run: () => fixed,
  isFixed: true,
  fixed,
  slot: -1,
  site,
});

export const cellPart = (slot: number, site: Site): Part => ({
  run: (columns, row) => readCell(columns, slot, row),
  isFixed: false,
  fixed: null,
  slot,
  site,
});

/** A cell beyond the end of its column is blank. */
export const readCell = (columns: FormulaColumns, slot: number, row: number): FormulaValue =>
  columns[slot]?.[row] ?? null;

/**
 * The value of a part. Most parts are a column or a number; reading those here, where the engine
 * inlines it, saves most of the calls between closures.
 */
export function valueOf(part: Part, columns: FormulaColumns, row: number): FormulaValue {
  if (part.slot >= 0) return readCell(columns, part.slot, row);
  return part.isFixed ? part.fixed : part.run(columns, row);
}

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
    // Adding 0 makes 0 of -0.
    const answer = rule.apply(first, second) + 0;
    return Number.isFinite(answer) ? answer : rule.why(first, second, sites);
  };
