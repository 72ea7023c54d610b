import { describe, expect, test } from "@jest/globals";
import {
  functionNamed,
  functionNames,
  functionOf,
  functionSignature,
} from "../../../src/core/formulas/functions";
import { readFormula } from "../../../src/core/formulas/read";
import { referencesOf } from "../../../src/core/formulas/references";
import { isFormulaError } from "../../../src/core/formulas/value";
import { run } from "./running";
import { vectors } from "./vectors";

const called = (name: string, count: number): string => {
  const first = name.toUpperCase() === "CHART" ? '"c"' : "1";
  return `${name}(${[first, "1", "1", "1", "1", "1"].slice(0, count).join(",")})`;
};

describe.each(functionNames)("%s", (name) => {
  const { least, most, example, pairs } = functionOf(name);

  test("has an example that reads and runs", () => {
    const read = readFormula(example);
    if (!read.ok) throw new Error(read.error.message);
    const values = Object.fromEntries(referencesOf(read.value).map((used) => [used, 60]));
    const value = run(example, values, { track_plates: () => "PLATE" });
    // Texts are not numbers: NOT and the like may be asked about 60, but nothing is missing.
    expect(isFormulaError(value)).toBe(false);
  });

  test("takes its least and its most arguments, and no others", () => {
    for (const count of [0, 1, 2, 3, 4, 5, 6]) {
      const fits =
        count >= least && count <= (most ?? 6) && (pairs === undefined || count % 2 === 0);
      expect([count, readFormula(called(name, count)).ok]).toEqual([count, fits]);
    }
  });

  test("is asked about in the spreadsheet cases", () => {
    const asked = vectors.some(([formula]) => formula.includes(`${name}(`));
    expect(asked || name === "CHART").toBe(true);
  });

  test("is known in any case", () => {
    expect(readFormula(called(name.toLowerCase(), least)).ok).toBe(true);
  });
});

describe("signatures", () => {
  test.each([
    ["ROUND", "ROUND(number, [digits])"],
    ["IF", "IF(condition, then, [else])"],
    ["IFS", "IFS(condition, answer, …)"],
    ["SWITCH", "SWITCH(value, case, answer, [otherwise], …)"],
    ["MAX", "MAX(number, …)"],
    ["TRUE", "TRUE()"],
    ["CHART", "CHART(chart, down, [across])"],
  ] as const)("%s is written %s", (name, signature) => {
    expect(functionSignature(name)).toBe(signature);
  });

  test("names that objects have of themselves are no functions", () => {
    expect(["constructor", "__proto__", "toString"].map(functionNamed)).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });
});
