/** Closures for the functions that choose: OpenFormula 6.15, and IFS and SWITCH as spreadsheets have them. */
import { asTruth, errorAt, pieceOf, shown, type Site } from "./coerce";
import { compareValues } from "./compare";
import { fixedPart, valueOf, type Evaluator, type Part } from "./evaluator";
import { isFormulaError } from "./value";

/** Only the branch that is needed runs. Without `otherwise` a false condition answers FALSE. */
export function ifThenElse(condition: Part, then: Part, otherwise: Part | undefined): Evaluator {
  const { site } = condition;
  const last = otherwise ?? fixedPart(false, site);
  return (columns, row) => {
    const value = valueOf(condition, columns, row);
    const truth = typeof value === "boolean" ? value : asTruth(value, site);
    if (typeof truth === "object") return truth;
    return truth ? valueOf(then, columns, row) : valueOf(last, columns, row);
  };
}

/** Conditions and answers in turn; stops at the first true one. */
export function firstTrue(pairs: readonly Part[], whole: Site): Evaluator {
  return (columns, row) => {
    for (let index = 0; index + 1 < pairs.length; index += 2) {
      const condition = pairs[index];
      const answer = pairs[index + 1];
      if (condition === undefined || answer === undefined) break;
      const truth = asTruth(valueOf(condition, columns, row), condition.site);
      if (typeof truth === "object") return truth;
      if (truth) return valueOf(answer, columns, row);
    }
    return errorAt(whole, "na", `No condition of ${pieceOf(whole)} is true.`);
  };
}

/** Cases and answers in turn after the value, and a last answer where their number is odd. */
export function chosen(value: Part, cases: readonly Part[], whole: Site): Evaluator {
  const otherwise = cases.length % 2 === 1 ? cases.at(-1) : undefined;
  return (columns, row) => {
    const wanted = valueOf(value, columns, row);
    if (isFormulaError(wanted)) return wanted;
    for (let index = 0; index + 1 < cases.length; index += 2) {
      const fits = cases[index];
      const answer = cases[index + 1];
      if (fits === undefined || answer === undefined) break;
      const candidate = valueOf(fits, columns, row);
      if (isFormulaError(candidate)) return candidate;
      if (compareValues(wanted, candidate) === 0) return valueOf(answer, columns, row);
    }
    if (otherwise !== undefined) return valueOf(otherwise, columns, row);
    return errorAt(whole, "na", `No case of ${pieceOf(whole)} is ${shown(wanted)}.`);
  };
}

/**
 * AND where `stopsAt` is false, OR where it is true. All arguments run, as in a spreadsheet, so that a
 * size that was not given is told wherever it stands. A blank is FALSE, where a spreadsheet would pass
 * over the cell: nobody who leaves a yes-or-no column empty means yes.
 */
export function everyOrAny(stopsAt: boolean, conditions: readonly Part[]): Evaluator {
  return (columns, row) => {
    let answer = !stopsAt;
    for (const condition of conditions) {
      const value = valueOf(condition, columns, row);
      const truth = typeof value === "boolean" ? value : asTruth(value, condition.site);
      if (typeof truth === "object") return truth;
      if (truth === stopsAt) answer = stopsAt;
    }
    return answer;
  };
}

export function negated(condition: Part): Evaluator {
  return (columns, row) => {
    const truth = asTruth(valueOf(condition, columns, row), condition.site);
    return typeof truth === "object" ? truth : !truth;
  };
}
