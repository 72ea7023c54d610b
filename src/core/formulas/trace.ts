/** The numbers put in: what a formula read on its way to its value. */
import type { CompiledFormula } from "./formula";
import type { FormulaColumns, FormulaValue } from "./value";

/** One name that was read, as first written in the formula, and its value. */
export type TracedRead = {
  readonly name: string;
  readonly written: string;
  readonly slot: number;
  readonly value: FormulaValue;
};

export type FormulaTrace = {
  readonly value: FormulaValue;
  /** Each name once, in the order in which they were first read; names that IF passed by are left out. */
  readonly reads: readonly TracedRead[];
};

export function traceFormula(
  compiled: CompiledFormula,
  columns: FormulaColumns,
  row: number,
): FormulaTrace {
  throw new Error(`Not written yet: ${compiled.text} ${columns.length} ${row}`);
}
