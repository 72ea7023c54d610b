import { describe, expect, test } from "@jest/globals";
import { isFormulaError, type FormulaValue } from "../../../src/core/formulas/value";
import { run } from "./running";
import { cells, vectors, type Answer } from "./vectors";

const answered = (value: FormulaValue): Answer =>
  isFormulaError(value) ? { error: value.code } : value;

describe("a formula answers what a spreadsheet answers", () => {
  test.each(vectors)("%s is %j (%s)", (formula, answer) => {
    const value = answered(run(formula, cells));
    if (typeof answer !== "number") expect(value).toEqual(answer);
    else expect(Number(Number(value).toPrecision(14))).toBe(Number(answer.toPrecision(14)));
  });

  test.each(vectors)("a leading = and spaces change nothing: =%s", (formula) => {
    const value = run(` = ${formula} `, cells);
    expect(answered(value)).toEqual(answered(run(formula, cells)));
  });
});
