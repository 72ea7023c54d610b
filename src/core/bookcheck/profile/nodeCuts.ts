/** The points of a stretch at which an operation may change what it makes of its operands. */
import { isComparison, type CallNode, type FormulaNode } from "../../formulas/tree";
import { meeting, meets, meetsSteps, type Numbers } from "./lines";
import type { Domain } from "./profile";

/** The numbers among a chart's keys. */
export type ChartKeys = {
  readonly down: readonly number[];
  readonly across: readonly number[];
};

/** The points at which the operation may change its course; `null` for too many. */
export function cutsOf(
  node: FormulaNode,
  numbers: Numbers,
  stretch: Domain,
  chartKeys: (name: string) => ChartKeys,
): readonly number[] | null {
  const [first = null, second = null] = numbers;
  if (node.kind === "binary") {
    const divides = node.operator === "/" || node.operator === "^";
    if (divides) return second === null ? [] : [...zeros([second]), ...zeros([first])];
    return isComparison(node.operator) && first !== null && second !== null
      ? meeting(first, second)
      : [];
  }
  if (node.kind === "chart") {
    const { down, across } = chartKeys(node.chart);
    return [
      ...down.flatMap((key) => (first === null ? [] : meets(first, key))),
      ...across.flatMap((key) => (second === null ? [] : meets(second, key))),
    ];
  }
  return node.kind === "call" ? callCuts(node, numbers, stretch) : [];
}

function callCuts(node: CallNode, numbers: Numbers, stretch: Domain): readonly number[] | null {
  const [first = null, second = null] = numbers;
  const steps = (step: number, offset: number): readonly number[] | null =>
    first === null || !(step > 0) ? [] : meetsSteps(first, step, offset, stretch);
  switch (node.function) {
    case "IF":
      return zeros(numbers.slice(0, 1));
    case "IFS":
      return zeros(numbers.filter((_, index) => index % 2 === 0));
    case "SWITCH":
      return numbers.flatMap((number, index) =>
        index % 2 === 1 && index < numbers.length - 1 && number !== null && first !== null
          ? meeting(first, number)
          : [],
      );
    case "AND":
    case "OR":
    case "NOT":
    case "ABS":
      return zeros(numbers);
    case "MIN":
    case "MAX":
      return numbers.flatMap((one, index) =>
        numbers
          .slice(index + 1)
          .flatMap((other) => (one === null || other === null ? [] : meeting(one, other))),
      );
    case "INT":
      return steps(1, 0);
    case "ROUND":
    case "ROUNDUP":
    case "ROUNDDOWN": {
      const step = 10 ** -Math.trunc(second?.slope === 0 ? second.atZero : 0);
      // With so many digits that a step is nothing, rounding leaves the number as it is.
      return step === 0 ? null : steps(step, node.function === "ROUND" ? step / 2 : 0);
    }
    case "CEILING":
    case "FLOOR":
    case "MOD":
      return numbers.length < 2 ? steps(1, 0) : steps(Math.abs(second?.atZero ?? 0), 0);
    default:
      return [];
  }
}

const zeros = (numbers: Numbers): readonly number[] =>
  numbers.flatMap((number) => (number === null ? [] : meets(number, 0)));
