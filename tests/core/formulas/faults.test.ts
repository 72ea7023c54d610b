import { describe, expect, test } from "@jest/globals";
import {
  errorFindingCodes,
  faultFinding,
  formulaFindings,
  type FormulaFaultCode,
} from "../../../src/core/formulas/findings";
import { compileFormula } from "../../../src/core/formulas/compile";
import { formulaLimits } from "../../../src/core/formulas/limits";
import { readFormula } from "../../../src/core/formulas/read";
import { scopeOf } from "./running";

type Case = readonly [text: string, code: FormulaFaultCode, position: number, says?: string];

const scope = scopeOf({ post_height: 84, "Tail run": 60 }, { track_plates: () => 1 });
const nested = "(".repeat(formulaLimits.depth + 1);

const cases: readonly Case[] = [
  ["", "formula-empty", 0],
  [" = ", "formula-empty", 0],
  ["1".repeat(formulaLimits.characters + 1), "formula-too-long", formulaLimits.characters],
  [nested, "formula-too-deep", formulaLimits.depth],
  ["-".repeat(formulaLimits.depth + 1), "formula-too-deep", formulaLimits.depth],
  [`1${"+1".repeat(formulaLimits.parts / 2)}`, "formula-too-many-parts", 0],
  ["(".repeat(formulaLimits.parts * 2 + 1), "formula-too-many-parts", formulaLimits.parts * 2],
  ["1 # 2", "formula-character", 2],
  ["1 != 2", "formula-character", 2, "not equal is <>"],
  ["$A$1", "formula-character", 0, "names, not cells"],
  ["1 + 😀", "formula-character", 4, "😀"],
  ["'x'", "formula-character", 0, "foot mark"],
  ['"abc', "formula-text-open", 0],
  ['1&"a""', "formula-text-open", 2],
  ['60 "', "formula-text-open", 3, "directly"],
  ["1+[Post height", "formula-bracket-name-open", 2],
  ["1e999", "formula-number", 0],
  ["1e308'", "formula-number", 0],
  ["7'-6", "formula-length-ambiguous", 0],
  ["x + 7' 6", "formula-length-unclear", 4],
  ["1+", "formula-value-expected", 2, "the end of the formula"],
  ["*2", "formula-value-expected", 0],
  ["()", "formula-value-expected", 1],
  ["1 2", "formula-operator-expected", 2],
  ["post height", "formula-operator-expected", 5, "[post height]"],
  ['5"x', "formula-operator-expected", 2],
  ['5"x"', "formula-text-open", 3],
  ["[IF](1,2)", "formula-operator-expected", 4],
  ["(1+2", "formula-bracket-open", 0],
  ["MAX(1,2", "formula-bracket-open", 3],
  ["1+2)", "formula-bracket-extra", 3],
  ["1,5", "formula-separator", 1, "full stop"],
  ["(1,5)", "formula-separator", 2],
  ["2' < x < 8'", "formula-comparison-chained", 7, "AND("],
  ["SUMM(1)", "formula-function-unknown", 0, "SUM?"],
  ["IFERROR(1,2)", "formula-function-unknown", 0],
  ["XLOOKUP(1,2)", "formula-function-unknown", 0, "The functions are IF,"],
  ["1+ROUND()", "formula-arguments", 2, "ROUND(number, [digits])"],
  ["ABS(1,2)", "formula-arguments", 0, "takes 1 argument."],
  ["IFS(1,2,3)", "formula-arguments", 0, "pairs"],
  ["IF(1,,3)", "formula-argument-empty", 5],
  ["IF(1,2,)", "formula-argument-empty", 7],
  ["CHART(x,1)", "formula-chart-name", 0],
  ["1 + post_hight", "formula-name-unknown", 4, "Did you mean post_height?"],
  ["tail_rum", "formula-name-unknown", 0, "Did you mean [Tail run]?"],
  ["[?]", "formula-name-unknown", 0],
  ["A1", "formula-name-unknown", 0],
  ['2*CHART("track plate",1)', "formula-chart-unknown", 8, 'Did you mean "track_plates"?'],
];

const shown = cases.map(
  ([text, code, position, says = ""]) => [text.slice(0, 40), code, position, text, says] as const,
);

function faultOf(text: string) {
  const read = readFormula(text);
  const compiled = read.ok ? compileFormula(read.value, scope) : read;
  return compiled.ok ? undefined : compiled.error;
}

describe("a formula that cannot be used says why and where", () => {
  test.each(shown)("%s: %s at %d", (_shown, code, position, text, says) => {
    const fault = faultOf(text);
    expect(fault).toMatchObject({ code, position });
    expect(fault?.message).toContain(says);
    expect(text.slice(position)).toContain(fault?.piece);
  });

  test.each(cases)("and leaves no place of its message empty", (text) => {
    const message = faultOf(text)?.message ?? "{";
    expect(message).not.toMatch(/\{\w+\}|undefined|NaN/);
  });

  test("every kind of fault has a case here", () => {
    const asked = new Set<string>(cases.map(([, code]) => code));
    const ofErrors = new Set<string>(Object.values(errorFindingCodes));
    const kinds = Object.keys(formulaFindings).filter((code) => !ofErrors.has(code));
    expect(kinds.filter((code) => !asked.has(code))).toEqual([]);
  });

  test("becomes a finding with its cell and the whole formula", () => {
    const place = { sheet: "Sizes", row: 3, column: 2 };
    const fault = faultOf("1+");
    if (fault === undefined) throw new Error("There is no fault");
    expect(faultFinding(fault, "1+", place)).toEqual({
      code: "formula-value-expected",
      level: "stop",
      place,
      found: "1+",
      message: fault.message,
    });
  });

  test("positions count in the text as typed, with its = and spaces", () => {
    expect(faultOf("  = 1 + post_hight")).toMatchObject({ position: 8 });
  });
});
