/** Closures for the functions: one maker for each name of the table in `functions.ts`. */
import { numberRules, type NumberRule, type NumberRuleName } from "./arithmetic";
import { asNumber, asText, errorAt, pieceOf, type Site } from "./coerce";
import { chosen, everyOrAny, firstTrue, ifThenElse, negated } from "./conditions";
import { fixedPart, slowly, valueOf, type Evaluator, type Part } from "./evaluator";
import type { CallNode } from "./tree";
import { isFormulaError, type FormulaValue } from "./value";

type Maker = (taken: readonly Part[], whole: Site) => Evaluator;

/** The argument `index`; only called for those that the table says must be there. */
function must(taken: readonly Part[], index: number): Part {
  const part = taken[index];
  if (part === undefined) throw new Error("A call has fewer arguments than its table row says");
  return part;
}

/** A rule of one number, or of two of which the second has a value where it is left out. */
const byRule =
  (name: NumberRuleName, leftOut = 0): Maker =>
  (taken, whole) => {
    const rule: NumberRule = numberRules[name];
    const { apply } = rule;
    const left = must(taken, 0);
    const right = taken[1] ?? fixedPart(leftOut, whole);
    const slow = slowly(rule, { whole, right: right.site }, left.site);
    return (columns, row) => {
      const a = valueOf(left, columns, row);
      const b = valueOf(right, columns, row);
      if (typeof a === "number" && typeof b === "number") {
        const answer = apply(a, b) + 0;
        if (Number.isFinite(answer)) return answer;
      }
      return slow(a, b);
    };
  };

/** Gathers numbers two by two, passing over blanks; 0 where there is none. */
const gathered =
  (name: "+" | "MIN" | "MAX"): Maker =>
  (taken, whole) => {
    const { apply, why } = numberRules[name];
    return (columns, row) => {
      let answer: number | undefined;
      for (const part of taken) {
        const value = valueOf(part, columns, row);
        if (value === null) continue;
        const { site } = part;
        const number = typeof value === "number" ? value : asNumber(value, site);
        if (typeof number === "object") return number;
        if (answer === undefined) {
          answer = number;
          continue;
        }
        const next = apply(answer, number);
        if (!Number.isFinite(next)) return why(answer, number, { whole, right: site });
        answer = next;
      }
      return answer ?? 0;
    };
  };

/**
 * ISBLANK, ISNUMBER and ISTEXT. A size that was not given is blank, and neither number nor text; any
 * other error is passed on, unlike in a spreadsheet, since a chart without an entry must stay a finding.
 */
const asked =
  (isSo: (value: FormulaValue) => boolean): Maker =>
  (taken) => {
    const { run } = must(taken, 0);
    return (columns, row) => {
      const value = run(columns, row);
      return isFormulaError(value) && value.code !== "missing" ? value : isSo(value);
    };
  };

const onText =
  (change: (text: string) => FormulaValue): Maker =>
  (taken) => {
    const { run } = must(taken, 0);
    return (columns, row) => {
      const text = asText(run(columns, row));
      return typeof text === "object" ? text : change(text);
    };
  };

/** LEFT and RIGHT count whole characters, so that none is ever cut in half. */
const partOfText =
  (part: (characters: readonly string[], count: number) => readonly string[]): Maker =>
  (taken, whole) => {
    const { run } = must(taken, 0);
    const counted = taken[1];
    return (columns, row) => {
      const text = asText(run(columns, row));
      if (typeof text === "object") return text;
      const count = counted === undefined ? 1 : asNumber(counted.run(columns, row), counted.site);
      if (typeof count === "object") return count;
      return count < 0
        ? errorAt(whole, "value", `${pieceOf(whole)}: the count is below 0.`)
        : part(Array.from(text), Math.trunc(count)).join("");
    };
  };

const makers: Readonly<Record<CallNode["function"], Maker>> = {
  IF: (taken) => ifThenElse(must(taken, 0), must(taken, 1), taken[2]),
  IFS: firstTrue,
  SWITCH: (taken, whole) => chosen(must(taken, 0), taken.slice(1), whole),
  AND: (taken) => everyOrAny(false, taken),
  OR: (taken) => everyOrAny(true, taken),
  NOT: (taken) => negated(must(taken, 0)),
  MIN: gathered("MIN"),
  MAX: gathered("MAX"),
  SUM: gathered("+"),
  ABS: byRule("ABS"),
  MOD: byRule("MOD"),
  INT: byRule("INT"),
  ROUND: byRule("ROUND"),
  ROUNDUP: byRule("ROUNDUP"),
  ROUNDDOWN: byRule("ROUNDDOWN"),
  CEILING: byRule("CEILING", 1),
  FLOOR: byRule("FLOOR", 1),
  ISBLANK: asked((value) => value === null || isFormulaError(value)),
  ISNUMBER: asked((value) => typeof value === "number"),
  ISTEXT: asked((value) => typeof value === "string"),
  LEN: onText((text) => Array.from(text).length),
  LEFT: partOfText((characters, count) => characters.slice(0, count)),
  RIGHT: partOfText((characters, count) =>
    characters.slice(Math.max(0, characters.length - count)),
  ),
  UPPER: onText((text) => text.toUpperCase()),
  LOWER: onText((text) => text.toLowerCase()),
  TRIM: onText((text) => text.split(" ").filter(Boolean).join(" ")),
};

export const call = (node: CallNode, taken: readonly Part[], whole: Site): Evaluator =>
  makers[node.function](taken, whole);
