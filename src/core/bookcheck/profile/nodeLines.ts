/** Operations that make lines of lines. */
import type { BinaryNode, CallNode, FormulaNode } from "../../formulas/tree";
import { courseOf, middle, plus, scaled, type NumberCourse, type Numbers } from "./lines";
import { unclear, type Course, type Domain } from "./profile";

/** The answer as a number along the stretch, where the operation keeps lines; else `null`. */
export function lineOf(
  node: FormulaNode,
  courses: readonly Course[],
  numbers: Numbers,
  stretch: Domain,
): Course | null {
  if (node.kind === "unary") {
    const [operand = null] = numbers;
    if (operand === null) return null;
    const times = { "+": 1, "-": -1, "%": 1 / 100 }[node.operator];
    return courseOf(scaled(operand, times));
  }
  if (node.kind === "binary") return arithmeticLine(node, numbers);
  if (node.kind !== "call") return null;
  // MIN, MAX and SUM pass over blanks.
  const gathers = node.function === "MIN" || node.function === "MAX" || node.function === "SUM";
  return callLine(
    node,
    gathers ? numbers.filter((_, index) => !isBlankCourse(courses[index])) : numbers,
    stretch,
  );
}

function arithmeticLine(
  { operator }: BinaryNode,
  [one = null, other = null]: Numbers,
): Course | null {
  if (one === null || other === null) return null;
  switch (operator) {
    case "+":
      return courseOf(plus(one, other));
    case "-":
      return courseOf(plus(one, other, -1));
    case "*":
      if (one.slope !== 0 && other.slope !== 0) return unclear;
      return courseOf(one.slope === 0 ? scaled(other, one.atZero) : scaled(one, other.atZero));
    case "/":
      if (other.slope !== 0) return one.slope === 0 && one.atZero === 0 ? null : unclear;
      return other.atZero === 0
        ? null
        : courseOf({ slope: one.slope / other.atZero, atZero: one.atZero / other.atZero });
    case "^":
      if (other.slope !== 0) return unclear;
      if (other.atZero === 1) return courseOf(one);
      return other.atZero === 0 ? null : unclear;
    default:
      return null;
  }
}

function callLine({ function: name }: CallNode, numbers: Numbers, stretch: Domain): Course | null {
  const at = middle(stretch);
  const heightOf = ({ slope, atZero }: NumberCourse): number => slope * at + atZero;
  const [first = null, second = null] = numbers;
  switch (name) {
    case "ABS":
      return first === null ? null : courseOf(scaled(first, Math.sign(heightOf(first))));
    case "MIN":
    case "MAX":
    case "SUM": {
      const known = numbers.filter((number) => number !== null);
      if (known.length < numbers.length) return null;
      if (name === "SUM") {
        return courseOf(known.reduce((sum, number) => plus(sum, number), { slope: 0, atZero: 0 }));
      }
      const sign = name === "MIN" ? 1 : -1;
      const [extreme] = known.toSorted((one, two) => sign * (heightOf(one) - heightOf(two)));
      return extreme === undefined ? null : courseOf(extreme);
    }
    case "MOD": {
      if (first === null || second === null) return null;
      if (second.slope !== 0) return unclear;
      if (second.atZero === 0) return null;
      const times = Math.floor(heightOf(first) / second.atZero);
      return courseOf({ slope: first.slope, atZero: first.atZero - times * second.atZero });
    }
    default:
      return null;
  }
}

const isBlankCourse = (course: Course | undefined): boolean =>
  course?.kind === "same" && course.value === null;
