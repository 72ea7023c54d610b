/** A formula that has been read, and one that is ready to run. */
import type { FormulaNode } from "./tree";
import type { FormulaColumns, FormulaValue, Value } from "./value";

/** One place where a formula reads a size or field. */
export type NameReference = {
  /** As `normalName` spells it. */
  readonly name: string;
  readonly written: string;
  readonly position: number;
};

/** One place where a formula looks into a chart. */
export type ChartReference = {
  /** As typed between the quotes. */
  readonly chart: string;
  readonly position: number;
};

/** A formula whose text makes sense; its names are not known to exist before it is compiled. */
export type Formula = {
  /** As typed, with its leading `=` if it has one: every position counts in this text. */
  readonly text: string;
  readonly tree: FormulaNode;
  /** Every place a name is read, in the order of the text. */
  readonly names: readonly NameReference[];
  readonly charts: readonly ChartReference[];
};

/**
 * The entry of one chart, or `undefined` where it has none, which makes the formula answer the error
 * `chart`. `across` is `null` where the formula gives none.
 */
export type ChartLookup = (down: Value, across: Value) => Value | undefined;

/** What the names of a formula mean while it is compiled. */
export type FormulaScope = {
  /** The column that holds the name's values; the name is spelt as `normalName` does. */
  readonly slotOf: (normalName: string) => number | undefined;
  /** All names that `slotOf` knows, as a person should read them: suggested where one is not known. */
  readonly names: () => readonly string[];
  /** The chart of this name; it is asked with the name spelt as `normalName` does. */
  readonly chart: (normalName: string) => ChartLookup | undefined;
  readonly chartNames: () => readonly string[];
};

/** A column that a formula may read, under the name that the formula first gives it. */
export type ReadColumn = {
  readonly slot: number;
  readonly name: string;
  readonly written: string;
};

/** A formula ready to run. Pure: the same columns and row give the same answer. */
export type CompiledFormula = {
  readonly text: string;
  readonly formula: Formula;
  /** The columns that it may read, each once, in the order of the text. */
  readonly columns: readonly ReadColumn[];
  /** The slots of `columns`. */
  readonly slots: readonly number[];
  /** Its value where it reads no column and no chart; then `evaluate` always answers the same. */
  readonly constant: FormulaValue | undefined;
  /**
   * The value for one row; column `slot` must exist for every slot of `slots`. A cell beyond a
   * column's end reads as blank.
   */
  readonly evaluate: (columns: FormulaColumns, row: number) => FormulaValue;
  /** For `traceFormula`: the same value, telling `read` each slot that was really read, in order. */
  readonly evaluateTold: (
    columns: FormulaColumns,
    row: number,
    read: (slot: number) => void,
  ) => FormulaValue;
};
