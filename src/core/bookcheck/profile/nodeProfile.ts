/** The profile of a formula: what each of its operations does to lines and steps. */
import type { Site } from "../../formulas/coerce";
import { childrenOf, type FormulaNode } from "../../formulas/tree";
import type { FormulaValue } from "../../formulas/value";
import { chosenOperand } from "./chosenOperand";
import { middle, numberCourse } from "./lines";
import { cutsOf, type ChartKeys } from "./nodeCuts";
import { lineOf } from "./nodeLines";
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
  readonly chartKeys: (name: string) => ChartKeys;
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
      return cutsOf(node, numbers, stretch, sight.chartKeys);
    },
    courseIn: (courses, stretch) => {
      if (isSettled(courses)) return settled(courses, stretch);
      const values = courses.map((course) => courseAt(course, middle(stretch)));
      const chosen = chosenOperand(site, values);
      if (chosen !== null) return courses[chosen] ?? unclear;
      const numbers = courses.map((course) => numberCourse(course, site));
      return lineOf(node, courses, numbers, stretch) ?? otherwise(node, courses, stretch, settled);
    },
  };
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
