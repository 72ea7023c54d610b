/**
 * Closures for operators. Each tries the common case (two numbers, or a number and a fixed one) in a
 * few instructions of its own, and leaves everything else to a slower half that is always right.
 */
import { difference, numberRules, product, quotient, sum, type RuleSites } from "./arithmetic";
import { asNumber, asText, errorAt, pieceOf, type Site } from "./coerce";
import { compareValues } from "./compare";
import { formulaLimits } from "./limits";
import { slowly, valueOf, type Evaluator, type Part } from "./evaluator";
import { showSame } from "./rounding";
import type { BinaryOperator, Comparison, UnaryOperator } from "./tree";
import { isFormulaError, type FormulaValue } from "./value";

export function binary(operator: BinaryOperator, left: Part, right: Part, whole: Site): Evaluator {
  switch (operator) {
    case "+":
    case "-":
    case "*":
    case "/":
    case "^":
      return arithmetic(operator, left, right, { whole, right: right.site });
    case "&":
      return joined(left, right, whole);
    default:
      return comparison(operator, left, right);
  }
}

export function unary(operator: UnaryOperator, operand: Part): Evaluator {
  const { site } = operand;
  // A plus sign changes nothing, not even a text (OpenFormula 6.4, prefix "+").
  if (operator === "+") return (columns, row) => valueOf(operand, columns, row);
  const isMinus = operator === "-";
  return (columns, row) => {
    const value = valueOf(operand, columns, row);
    const number = typeof value === "number" ? value : asNumber(value, site);
    if (typeof number === "object") return number;
    return isMinus ? 0 - number : number / 100;
  };
}

function arithmetic(
  operator: "+" | "-" | "*" | "/" | "^",
  left: Part,
  right: Part,
  sites: RuleSites,
): Evaluator {
  const slow = slowly(numberRules[operator], sites, left.site);
  switch (operator) {
    case "+":
      return (columns, row) => {
        const a = valueOf(left, columns, row);
        const b = valueOf(right, columns, row);
        if (typeof a === "number" && typeof b === "number") {
          const answer = sum(a, b);
          if (Number.isFinite(answer)) return answer;
        }
        return slow(a, b);
      };
    case "-":
      return (columns, row) => {
        const a = valueOf(left, columns, row);
        const b = valueOf(right, columns, row);
        if (typeof a === "number" && typeof b === "number") {
          const answer = difference(a, b);
          if (Number.isFinite(answer)) return answer;
        }
        return slow(a, b);
      };
    case "*":
      return (columns, row) => {
        const a = valueOf(left, columns, row);
        const b = valueOf(right, columns, row);
        if (typeof a === "number" && typeof b === "number") {
          const answer = product(a, b);
          if (Number.isFinite(answer)) return answer;
        }
        return slow(a, b);
      };
    case "/":
      return (columns, row) => {
        const a = valueOf(left, columns, row);
        const b = valueOf(right, columns, row);
        if (typeof a === "number" && typeof b === "number") {
          const answer = quotient(a, b);
          if (Number.isFinite(answer)) return answer;
        }
        return slow(a, b);
      };
    case "^":
      return (columns, row) => slow(valueOf(left, columns, row), valueOf(right, columns, row));
  }
}

function joined(left: Part, right: Part, whole: Site): Evaluator {
  return (columns, row) => {
    const first = asText(valueOf(left, columns, row));
    if (typeof first === "object") return first;
    const second = asText(valueOf(right, columns, row));
    if (typeof second === "object") return second;
    // Sizes that double one another's text could otherwise outgrow the machine.
    return first.length + second.length <= formulaLimits.textResult
      ? first + second
      : errorAt(whole, "value", `The text that ${pieceOf(whole)} makes is too long.`);
  };
}

/** What the sign of `compareValues` must be. */
const holds: Readonly<Record<Comparison, (order: number) => boolean>> = {
  "=": (order) => order === 0,
  "<>": (order) => order !== 0,
  "<": (order) => order < 0,
  "<=": (order) => order <= 0,
  ">": (order) => order > 0,
  ">=": (order) => order >= 0,
};

function comparison(operator: Comparison, left: Part, right: Part): Evaluator {
  const isTrue = holds[operator];
  const slow = (a: FormulaValue, b: FormulaValue): FormulaValue => {
    if (isFormulaError(a)) return a;
    return isFormulaError(b) ? b : isTrue(compareValues(a, b));
  };
  const isEquality = operator === "=" || operator === "<>";
  if (isEquality && typeof right.fixed === "string") {
    return againstText(operator === "=", left, right.fixed, slow);
  }
  switch (operator) {
    case "<":
      return (columns, row) => {
        const a = valueOf(left, columns, row);
        const b = valueOf(right, columns, row);
        return typeof a === "number" && typeof b === "number"
          ? a < b && !showSame(a, b)
          : slow(a, b);
      };
    case "<=":
      return (columns, row) => {
        const a = valueOf(left, columns, row);
        const b = valueOf(right, columns, row);
        return typeof a === "number" && typeof b === "number"
          ? a <= b || showSame(a, b)
          : slow(a, b);
      };
    case ">":
      return (columns, row) => {
        const a = valueOf(left, columns, row);
        const b = valueOf(right, columns, row);
        return typeof a === "number" && typeof b === "number"
          ? a > b && !showSame(a, b)
          : slow(a, b);
      };
    case ">=":
      return (columns, row) => {
        const a = valueOf(left, columns, row);
        const b = valueOf(right, columns, row);
        return typeof a === "number" && typeof b === "number"
          ? a >= b || showSame(a, b)
          : slow(a, b);
      };
    default: {
      const isEqual = operator === "=";
      return (columns, row) => {
        const a = valueOf(left, columns, row);
        const b = valueOf(right, columns, row);
        return typeof a === "number" && typeof b === "number"
          ? showSame(a, b) === isEqual
          : slow(a, b);
      };
    }
  }
}

function againstText(
  isEqual: boolean,
  left: Part,
  text: string,
  slow: (a: FormulaValue, b: FormulaValue) => FormulaValue,
): Evaluator {
  // A column repeats few different texts, mostly as one string in memory.
  let last: string | undefined;
  let answer: FormulaValue = null;
  return (columns, row) => {
    const value = valueOf(left, columns, row);
    if (value === text) return isEqual;
    if (typeof value !== "string") return slow(value, text);
    if (value !== last) {
      last = value;
      answer = slow(value, text);
    }
    return answer;
  };
}
