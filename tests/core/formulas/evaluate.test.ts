import { describe, expect, test } from "@jest/globals";
import { errorFinding } from "../../../src/core/formulas/findings";
import { chartsOf, referencesOf } from "../../../src/core/formulas/references";
import { traceFormula } from "../../../src/core/formulas/trace";
import {
  blankColumn,
  formulaError,
  missingError,
  type FormulaValue,
} from "../../../src/core/formulas/value";
import { columnsOf, compiledFrom, run, scopeOf } from "./running";

const missing = missingError("Tail run");
const plates = (down: unknown, across: unknown) =>
  down === 84 && across === 96 ? "PLATE 7-8" : undefined;

describe("errors travel as values", () => {
  test("the first one is passed on as it is", () => {
    const other = formulaError("cell", "It shows #REF!.");
    const values = { a: missing, b: other, c: 1 };
    for (const text of [
      "a+1",
      "1+a",
      "a+b",
      "-a",
      'a&"x"',
      "a<1",
      "1=a",
      "MAX(c,a,b)",
      "IF(a,1,2)",
    ])
      expect(run(text, values)).toBe(missing);
    for (const text of ["SWITCH(a,1,2)", "ABS(a)", "ROUND(1,a)", "AND(FALSE,a)", "LEFT(a,1)", "a%"])
      expect(run(text, values)).toBe(missing);
    expect(run("b+a", values)).toBe(other);
  });

  test("a branch that is not taken is not asked", () => {
    expect(run("IF(TRUE,1,a)", { a: missing })).toBe(1);
    expect(run("IFS(TRUE,1,a,2)", { a: missing })).toBe(1);
    expect(run("SWITCH(1,1,2,a,3)", { a: missing })).toBe(2);
  });

  test("a size that was not given is blank, neither number nor text", () => {
    expect(run("ISBLANK(a)", { a: missing })).toBe(true);
    expect(run("ISNUMBER(a)", { a: missing })).toBe(false);
    expect(run("ISTEXT(a)", { a: missing })).toBe(false);
    expect(run("IF(ISBLANK(a),0,a/2)", { a: missing })).toBe(0);
  });

  test("any other error is not hidden by asking about it", () => {
    const other = formulaError("chart", "No entry.");
    for (const text of ["ISBLANK(a)", "ISNUMBER(a)", "ISTEXT(a)"])
      expect(run(text, { a: other })).toBe(other);
  });

  test.each([
    ["2 * floor", { floor: "wood" }, "value", 4, 'floor is "wood", not a number.'],
    ['1 + "abc"', {}, "value", 4, '"abc" is not a number.'],
    ["IF(floor, 1, 2)", { floor: "x" }, "value", 3, "not a condition (TRUE or FALSE)"],
    ["width / count", { width: 96, count: 0 }, "div0", 8, "count is 0"],
    ["1 + MOD(7, 0)", {}, "div0", 11, "0 is 0"],
    ["2 ^ 5000", {}, "num", 0, "2 ^ 5000 is too large"],
    ["CEILING(5, -2)", {}, "num", 0, "the step is below 0"],
    ["IFS(a > 9, 1)", { a: 1 }, "na", 0, "No condition of IFS(a > 9, 1) is true."],
    ['1 + SWITCH(floor, "wood", 4)', { floor: "steel" }, "na", 4, 'is "steel"'],
    ["LEFT(1, -1)", {}, "value", 0, "below 0"],
  ] as const)("%s tells what, where and why", (text, values, code, position, says) => {
    const error = run(text, values);
    expect(error).toMatchObject({ kind: "formula-error", code, position, formula: text });
    expect((error as { message: string }).message).toContain(says);
  });

  test("becomes a finding with what to do", () => {
    const place = { sheet: "Parts", row: 4, column: 6 };
    expect(errorFinding(missing, { place, found: "tail_run / 2", mark: "D1" })).toEqual({
      code: "formula-value-missing",
      level: "stop",
      place,
      found: "tail_run / 2",
      mark: "D1",
      message: "Tail run is not given. Fill in the value that is missing.",
    });
  });

  test("a text that grows beyond a cell is an error, not a crash", () => {
    const long = "x".repeat(20_000);
    expect(run("a & a", { a: long })).toMatchObject({ code: "value", message: /too long/ });
  });
});

describe("charts", () => {
  const values = { post_height: 84, height: 96, floor: "wood" };

  test("are asked for down and across", () => {
    expect(
      run('CHART("Track plates", post_height, height)', values, { track_plates: plates }),
    ).toBe("PLATE 7-8");
  });

  test("of one way are asked for down only", () => {
    const anchors = (down: unknown, across: unknown) =>
      across === null && down === "wood" ? 4 : 0;
    expect(run('2 * CHART("anchors", floor)', values, { anchors })).toBe(8);
  });

  test("without the entry give an error that shows what was looked for", () => {
    const text = '1 + CHART("Track plates", height, floor)';
    expect(run(text, values, { track_plates: plates })).toEqual({
      kind: "formula-error",
      code: "chart",
      message:
        'The chart "Track plates" has no entry for 96 down and "wood" across (CHART("Track plates", height, floor)).',
      position: 4,
      formula: text,
      chart: { node: expect.objectContaining({ chart: "Track plates" }), down: 96, across: "wood" },
    });
  });

  test("are not asked with an error", () => {
    const asked = () => {
      throw new Error("asked");
    };
    expect(run('CHART("c", a, 1)', { a: missing }, { c: asked })).toBe(missing);
    expect(run('CHART("c", 1, a)', { a: missing }, { c: asked })).toBe(missing);
  });

  test("are asked each time, not once when compiled", () => {
    let entry = 1;
    const compiled = compiledFrom('CHART("c", 1)', scopeOf({}, { c: () => entry }));
    expect(compiled.constant).toBeUndefined();
    entry = 2;
    expect(compiled.evaluate([], 0)).toBe(2);
  });
});

describe("over columns", () => {
  test("each row has its own answer", () => {
    const compiled = compiledFrom("IF(width <= 5', 1, 2) * count", scopeOf({ count: 0, width: 0 }));
    const columns: FormulaValue[][] = [
      [1, 2, 3, "4", null],
      [48, 60, 60.5, 96, 96],
    ];
    expect([0, 1, 2, 3, 4].map((row) => compiled.evaluate(columns, row))).toEqual([1, 2, 6, 8, 0]);
    expect(compiled.slots).toEqual([1, 0]);
    expect(compiled.columns.map(({ name }) => name)).toEqual(["width", "count"]);
  });

  test("a cell beyond a column's end, and a column that is not there, are blank", () => {
    const compiled = compiledFrom("ISBLANK(a)", scopeOf({ a: 0 }));
    expect([compiled.evaluate([[1]], 0), compiled.evaluate([[1]], 1)]).toEqual([false, true]);
    expect(compiled.evaluate([], 0)).toBe(true);
    expect(blankColumn(3)).toEqual([null, null, null]);
  });

  test("the same texts in another case or another order are told apart", () => {
    const compiled = compiledFrom('IF(floor = "Wood", 4, 0)', scopeOf({ floor: "" }));
    const floors = ["wood", "steel", "WOOD", "steel", "Wood", null, "wood", 3, true, "wood"];
    expect(floors.map((_, row) => compiled.evaluate([floors], row))).toEqual([
      4, 0, 4, 0, 4, 0, 4, 0, 0, 4,
    ]);
  });

  test("a formula without names is worked out once", () => {
    expect(compiledFrom("2 * 3'", scopeOf({})).constant).toBe(72);
    expect(compiledFrom("1/0", scopeOf({})).constant).toMatchObject({ code: "div0" });
    expect(compiledFrom("a", scopeOf({ a: 1 })).constant).toBeUndefined();
  });

  test("minus nothing is nothing", () => {
    for (const text of [
      "-a",
      "a * -1",
      "a / -5",
      "ROUND(-0.1, 0)",
      "-0",
      "MIN(0, -a)",
      "CEILING(-1, 5)",
    ])
      expect([text, Object.is(run(text, { a: 0 }), 0)]).toEqual([text, true]);
  });
});

describe("what a formula reads", () => {
  const text = 'IF(b > a, B + [A], CHART("x", c) + CHART("X", b))';

  test("is known before it runs", () => {
    const { formula } = compiledFrom(text, scopeOf({ a: 1, b: 2, c: 3 }, { x: () => 1 }));
    expect(referencesOf(formula)).toEqual(["b", "a", "c"]);
    expect(chartsOf(formula)).toEqual(["x"]);
    expect(formula.names.map(({ position }) => position)).toEqual([3, 7, 10, 14, 30, 46]);
  });

  test("is told when it ran, without what was passed by", () => {
    const values = { a: 1, b: 2, c: 3 };
    const compiled = compiledFrom(text, scopeOf(values, { x: () => 1 }));
    expect(traceFormula(compiled, columnsOf(values), 0)).toEqual({
      value: 3,
      reads: [
        { slot: 1, name: "b", written: "b", value: 2 },
        { slot: 0, name: "a", written: "a", value: 1 },
      ],
    });
  });

  test("may be told inside another telling", () => {
    const values = { a: 7 };
    const inner = compiledFrom("a", scopeOf(values));
    const read: string[] = [];
    inner.evaluateTold(columnsOf(values), 0, () => {
      traceFormula(inner, columnsOf(values), 0);
      read.push("outer");
    });
    expect(read).toEqual(["outer"]);
  });
});
