import type { Result } from "../base/result";
import type { FormulaFault } from "./findings";
import type { Formula } from "./formula";

export function readFormula(text: string): Result<Formula, FormulaFault> {
  throw new Error(`Not written yet: ${text}`);
}
