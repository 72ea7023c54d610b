/** The numbers put in: what a formula really read on its way to its value. */
import { readCell } from "./evaluator";
import type { CompiledFormula, ReadColumn } from "./formula";
import type { FormulaColumns, FormulaValue } from "./value";

/** One column that was read, and its value. */
export type TracedRead = ReadColumn & { readonly value: FormulaValue };

export type FormulaTrace = {
  readonly value: FormulaValue;
  /** Each name once, in the order in which they were first read; what IF passed by is left out. */
  readonly reads: readonly TracedRead[];
};

/**
 * Works the formula out for one row and tells what it read. A reason can then say `panels =
 * IF(leaf_width <= 5', 1, 2) with leaf_width 8'-0"`. Slower than `evaluate`: for the rows that a
 * person looks at.
 */
export function traceFormula(
  compiled: CompiledFormula,
  columns: FormulaColumns,
  row: number,
): FormulaTrace {
  const read = new Set<number>();
  const value = compiled.evaluateTold(columns, row, (slot) => read.add(slot));
  const reads = [...read].flatMap((slot) =>
    compiled.columns
      .filter((column) => column.slot === slot)
      .map((column) => ({ ...column, value: readCell(columns, slot, row) })),
  );
  return { value, reads };
}
