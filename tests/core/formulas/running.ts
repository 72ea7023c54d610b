/** Formulas run from a text and a few named values, for tests. */
import { compileFormula } from "../../../src/core/formulas/compile";
import type {
  ChartLookup,
  CompiledFormula,
  FormulaScope,
} from "../../../src/core/formulas/formula";
import { normalName } from "../../../src/core/formulas/names";
import { readFormula } from "../../../src/core/formulas/read";
import type { FormulaColumns, FormulaValue } from "../../../src/core/formulas/value";

type Values = Readonly<Record<string, FormulaValue>>;
type Charts = Readonly<Record<string, ChartLookup>>;

/** Each name is the column of its place in `values`; charts by their normal names. */
export function scopeOf(values: Values, charts: Charts = {}): FormulaScope {
  const slots = new Map(Object.keys(values).map((name, slot) => [normalName(name), slot]));
  return {
    slotOf: (name) => slots.get(name),
    names: () => Object.keys(values),
    chart: (name) => charts[name],
    chartNames: () => Object.keys(charts),
  };
}

/** One row of columns. */
export const columnsOf = (values: Values): FormulaColumns =>
  Object.values(values).map((value) => [value]);

/** @throws Error with the fault's message. */
export function compiledFrom(text: string, scope: FormulaScope): CompiledFormula {
  const formula = readFormula(text);
  if (!formula.ok) throw new Error(`${text}: ${formula.error.message}`);
  const compiled = compileFormula(formula.value, scope);
  if (!compiled.ok) throw new Error(`${text}: ${compiled.error.message}`);
  return compiled.value;
}

/** The value of `text` over `values`. @throws Error where it has a fault. */
export const run = (text: string, values: Values = {}, charts: Charts = {}): FormulaValue =>
  compiledFrom(text, scopeOf(values, charts)).evaluate(columnsOf(values), 0);
