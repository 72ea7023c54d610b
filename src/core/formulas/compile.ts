import type { Result } from "../base/result";
import type { FormulaFault } from "./findings";
import type { CompiledFormula, Formula, FormulaScope } from "./formula";

export function compileFormula(
  formula: Formula,
  scope: FormulaScope,
): Result<CompiledFormula, FormulaFault> {
  throw new Error(`Not written yet: ${formula.text} ${scope.names().length}`);
}
