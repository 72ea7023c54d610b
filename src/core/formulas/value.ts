/** What a formula reads and answers. Errors are values that travel, as in a spreadsheet. */
import type { ChartNode } from "./tree";

/** A value of a formula; `null` is a blank cell and reads as 0, the empty text or FALSE. */
export type Value = string | number | boolean | null;

/**
 * Why a formula has no value:
 * `missing` a size or field that was not given or could not be read; `value` a value of the wrong
 * kind; `div0` a division by zero; `na` no case of IFS or SWITCH fits; `num` an impossible number;
 * `name` a name with nothing behind it; `chart` a chart without an entry; `cell` a cell of the
 * spreadsheet that shows an error itself.
 */
export type FormulaErrorCode =
  "missing" | "value" | "div0" | "na" | "num" | "name" | "chart" | "cell";

/**
 * A formula's error as a value. It is passed on unchanged, so it always tells of its first cause.
 * `position` is the character (from zero) of `formula` at which it arose; an error that came in with
 * a column has the empty text for `formula`, and 0.
 */
export type FormulaError = {
  readonly kind: "formula-error";
  readonly code: FormulaErrorCode;
  /** What is wrong, as one or more sentences. */
  readonly message: string;
  readonly position: number;
  readonly formula: string;
  /** What was looked for, where the code is `chart`. */
  readonly chart?: ChartMiss;
};

/** A look into a chart that found nothing; `across` is `null` where the formula gives none. */
export type ChartMiss = {
  readonly node: ChartNode;
  readonly down: Value;
  readonly across: Value;
};

/** What a column may hold and a formula may answer. */
export type FormulaValue = Value | FormulaError;

/** Formulas read `columns[slot][row]`. */
export type FormulaColumns = readonly (readonly FormulaValue[])[];

export const isFormulaError = (value: FormulaValue): value is FormulaError =>
  typeof value === "object" && value !== null;

/** An error that arose at `position` of `formula`; leave both out for one that a column holds. */
export const formulaError = (
  code: FormulaErrorCode,
  message: string,
  position = 0,
  formula = "",
): FormulaError => ({ kind: "formula-error", code, message, position, formula });

/** What a column holds where the size or field called `label` was not given. */
export const missingError = (label: string): FormulaError =>
  formulaError("missing", `${label} is not given.`);

/**
 * A column of blanks for `rows` rows. Columns that are all made here have one memory layout, which
 * keeps formulas over them several times faster than a mix of number-only and other arrays.
 */
export const blankColumn = (rows: number): FormulaValue[] =>
  new Array<FormulaValue>(rows).fill(null);
