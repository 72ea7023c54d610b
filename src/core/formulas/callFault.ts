/** What can be wrong with a function's name and the number of its arguments. */
import { formulaFault, type FormulaFault } from "./findings";
import { functionNames, functionOf, functionSignature, type FunctionName } from "./functions";
import { nearestName } from "./names";
import type { FormulaNode } from "./tree";

/** The fault of a call that was written as `written` at `position`, if it has one. */
export function callFault(
  written: string,
  position: number,
  called: FunctionName | undefined,
  taken: readonly FormulaNode[],
): FormulaFault | undefined {
  if (called === undefined) {
    const near = nearestName(written, functionNames);
    const known = `The functions are ${functionNames.join(", ")}.`;
    const hint = near === undefined ? known : `Did you mean ${near}?`;
    return formulaFault("formula-function-unknown", position, written, { hint });
  }
  const { least, most, pairs } = functionOf(called);
  const count = taken.length;
  if (count < least || count > (most ?? count) || (pairs === true && count % 2 !== 0)) {
    const values = {
      count: counted(count),
      takes: takes(called),
      signature: functionSignature(called),
    };
    return formulaFault("formula-arguments", position, written, values);
  }
  const [first] = taken;
  if (called === "CHART" && first?.kind !== "text") {
    return formulaFault("formula-chart-name", position, written);
  }
  return undefined;
}

function takes(called: FunctionName): string {
  const { least, most, pairs } = functionOf(called);
  if (pairs === true) return "arguments in pairs";
  if (most === null) return `at least ${counted(least)}`;
  return most === least ? counted(least) : `${least} to ${counted(most)}`;
}

function counted(count: number): string {
  if (count === 0) return "no arguments";
  return count === 1 ? "1 argument" : `${count} arguments`;
}
