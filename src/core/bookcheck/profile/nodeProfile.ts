/** The profile of a formula: what each of its operations does to lines and steps. */
import { asTruth, type Site } from "../../formulas/coerce";
import { compareValues } from "../../formulas/compare";
import {
  childrenOf,
  isComparison,
  type BinaryNode,
  type CallNode,
  type FormulaNode,
} from "../../formulas/tree";
import { isFormulaError, type FormulaValue } from "../../formulas/value";
import {
  courseOf,
  meeting,
  meets,
  meetsSteps,
  middle,
  numberCourse,
  plus,
  scaled,
  type NumberCourse,
} from "./lines";
import { operationOf, type ChartNamed, type Operation } from "./operation";
import {
  combine,
  constantProfile,
  courseAt,
  same,
  unclear,
  type Combination,
  type Course,
  type Domain,
  type Profile,
} from "./profile";

/** What a formula's names and charts are along the number. */
export type Sight = {
  readonly domain: Domain;
  readonly profileOf: (name: string) => Profile;
  readonly chart: ChartNamed;
  /** The numbers among a chart's keys, down and across. */
  readonly chartKeys: (name: string) => {
    readonly down: readonly number[];
    readonly across: readonly number[];
  };
};

/** How the value of `node`, a part of the formula `text`, runs along the number. */
export function nodeProfile(text: string, node: FormulaNode, sight: Sight): Profile {
  switch (node.kind) {
    case "number":
    case "text":
    case "logical":
      return constantProfile(node.value);
    case "name":
      return sight.profileOf(node.name);
    default: {
      const parts = childrenOf(node).map((child) => nodeProfile(text, child, sight));
      const operation = operationOf(text, node, sight.chart);
      return combine(parts, combinationOf({ formula: text, node }, operation, sight), sight.domain);
    }
  }
}

function combinationOf(site: Site, operation: Operation, sight: Sight): Combination {
  const { node } = site;
  const valueAt = (values: readonly (FormulaValue | undefined)[]): FormulaValue | undefined => {
    const known = values.filter((value) => value !== undefined);
    if (known.length === values.length) return operation(known);
    // An operand that is unclear does no harm where the operation never reads it.
    const index = chosenOperand(site, values);
    return index === null ? undefined : values[index];
  };
  /** The operation where none of its operands, nor its answer, changes on the stretch. */
  const settled = (courses: readonly Course[], stretch: Domain): Course => {
    const value = valueAt(courses.map((course) => courseAt(course, middle(stretch))));
    return value === undefined ? unclear : same(value);
  };
  const isSettled = (courses: readonly Course[]): boolean =>
    courses.every((course) => course.kind === "same");
  return {
    valueAt,
    cutsIn: (courses, stretch) => {
      if (isSettled(courses)) return [];
      const numbers = courses.map((course) => numberCourse(course, site));
      return cutsOf(node, courses, numbers, stretch, sight);
    },
    courseIn: (courses, stretch) => {
      if (isSettled(courses)) return settled(courses, stretch);
      const chosen = chooses(node)
        ? chosenOperand(
            site,
            courses.map((course) => courseAt(course, middle(stretch))),
          )
        : null;
      if (chosen !== null) return courses[chosen] ?? unclear;
      const numbers = courses.map((course) => numberCourse(course, site));
      return lineOf(node, courses, numbers, stretch) ?? otherwise(node, courses, stretch, settled);
    },
  };
}

type Numbers = readonly (NumberCourse | null)[];

/** The points at which the operation may change its course; `null` for too many. */
function cutsOf(
  node: FormulaNode,
  courses: readonly Course[],
  numbers: Numbers,
  stretch: Domain,
  sight: Sight,
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
    const { down, across } = sight.chartKeys(node.chart);
    return [
      ...down.flatMap((key) => (first === null ? [] : meets(first, key))),
      ...across.flatMap((key) => (second === null ? [] : meets(second, key))),
    ];
  }
  return node.kind === "call" ? callCuts(node, courses, numbers, stretch) : [];
}

function callCuts(
  node: CallNode,
  courses: readonly Course[],
  numbers: Numbers,
  stretch: Domain,
): readonly number[] | null {
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
      return courses.length < 2 ? steps(1, 0) : steps(Math.abs(second?.atZero ?? 0), 0);
    default:
      return [];
  }
}

const isBlankCourse = (course: Course | undefined): boolean =>
  course?.kind === "same" && course.value === null;

const zeros = (numbers: Numbers): readonly number[] =>
  numbers.flatMap((number) => (number === null ? [] : meets(number, 0)));

/** The answer as a number along the stretch, where the operation keeps lines; else `null`. */
function lineOf(
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

/**
 * Where the answer is no line: it stays the same between cuts, except for texts that are made of a
 * number, for steps whose height changes, and for what is unclear itself.
 */
function otherwise(
  node: FormulaNode,
  courses: readonly Course[],
  stretch: Domain,
  settled: (courses: readonly Course[], stretch: Domain) => Course,
): Course {
  const isLine = (index: number): boolean => courses[index]?.kind === "line";
  if (node.kind === "binary" && node.operator === "&" && (isLine(0) || isLine(1))) return unclear;
  if (node.kind === "call") {
    const makesText = ["LEN", "LEFT", "RIGHT", "UPPER", "LOWER", "TRIM"].includes(node.function);
    const stepChanges =
      ["ROUND", "ROUNDUP", "ROUNDDOWN", "CEILING", "FLOOR"].includes(node.function) && isLine(1);
    if ((makesText && (isLine(0) || isLine(1))) || stepChanges) return unclear;
  }
  return settled(courses, stretch);
}

const chooses = (node: FormulaNode): boolean =>
  node.kind === "call" && ["IF", "IFS", "SWITCH"].includes(node.function);

/** Which operand IF, IFS and SWITCH answer; `null` where they answer none, or that is unclear. */
function chosenOperand(site: Site, values: readonly (FormulaValue | undefined)[]): number | null {
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
