/** Which of its operands a choice answers: IF, IFS and SWITCH run only what they need. */
import { asTruth, type Site } from "../../formulas/coerce";
import { compareValues } from "../../formulas/compare";
import { isFormulaError, type FormulaValue } from "../../formulas/value";

/** Which operand IF, IFS and SWITCH answer; `null` where they answer none, or that is unclear. */
export function chosenOperand(
  site: Site,
  values: readonly (FormulaValue | undefined)[],
): number | null {
  const { node } = site;
  if (node.kind !== "call") return null;
  const [first] = values;
  switch (node.function) {
    case "IF": {
      const truth = truthOf(first, site);
      if (truth === null || (!truth && values.length < 3)) return null;
      return truth ? 1 : 2;
    }
    case "IFS":
      for (let index = 0; index + 1 < values.length; index += 2) {
        const truth = truthOf(values[index], site);
        if (truth === null) return null;
        if (truth) return index + 1;
      }
      return null;
    case "SWITCH": {
      if (first === undefined || isFormulaError(first)) return null;
      for (let index = 1; index + 1 < values.length; index += 2) {
        const fits = values[index];
        if (fits === undefined || isFormulaError(fits)) return null;
        if (compareValues(first, fits) === 0) return index + 1;
      }
      return values.length % 2 === 0 ? values.length - 1 : null;
    }
    default:
      return null;
  }
}

function truthOf(value: FormulaValue | undefined, site: Site): boolean | null {
  if (value === undefined) return null;
  const truth = asTruth(value, site);
  return isFormulaError(truth) ? null : truth;
}
