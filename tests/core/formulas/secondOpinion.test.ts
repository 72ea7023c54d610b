/**
 * The same cases put to a general-purpose spreadsheet engine (@ironcalc/wasm, for tests only). Each
 * difference is listed with its answer and its reason; a difference that has gone fails as well.
 */
import { readFileSync } from "node:fs";
import { initSync, Model } from "@ironcalc/wasm";
import { beforeAll, describe, expect, test } from "@jest/globals";
import { cells, vectors, type Answer } from "./vectors";

const errorsShown: Readonly<Record<string, Answer>> = {
  "#DIV/0!": { error: "div0" },
  "#VALUE!": { error: "value" },
  "#NUM!": { error: "num" },
  "#N/A": { error: "na" },
};

/** Cell types of the engine, as a spreadsheet's TYPE tells them. */
const numberType = 1;
const logicalType = 4;

type Difference = { readonly theirs: Answer; readonly because: string };

const leavesOpen = "OpenFormula leaves 0 to the power of 0 open, and a kit book never means it";
const lessThanShown = "it takes the double as it is; ours takes the 15 digits that are shown";
const passesOver =
  "it passes over what is no number; ours tells of it, so that nothing is left out";
const stopsEarly = "it stops at the first argument that decides; ours tells of every error";

const differences: Readonly<Record<string, Difference>> = {
  "0^0": { theirs: 1, because: leavesOpen },
  "0^-1": { theirs: { error: "num" }, because: "it has no quotient here; ours divides 1 by 0" },
  '1/3&""': { theirs: "0.3333333333333333", because: lessThanShown },
  '0.1+0.2&""': { theirs: "0.30000000000000004", because: lessThanShown },
  "MOD(0.3,0.1)": { theirs: 0.1, because: lessThanShown },
  "INT((0.1+0.7)*10)": { theirs: 7, because: lessThanShown },
  "ROUND(1.005,2)": { theirs: 1, because: lessThanShown },
  "ROUND(-1.005,2)": { theirs: -1, because: lessThanShown },
  "AND(FALSE,1/0)": { theirs: false, because: stopsEarly },
  "OR(TRUE,1/0)": { theirs: true, because: stopsEarly },
  "AND(TRUE,a3)": {
    theirs: true,
    because: "a blank cell is passed over there; here a blank yes-or-no field means no",
  },
  'AND(TRUE,"abc")': { theirs: true, because: passesOver },
  'MAX("7",2)': { theirs: 2, because: passesOver },
  'MIN("abc",2)': { theirs: 2, because: passesOver },
  "SUM(a1,a2)": { theirs: 5, because: passesOver },
  "ISNUMBER(1/0)": {
    theirs: false,
    because: "an error would be hidden; a chart without an entry must stay a finding",
  },
};

let model: Model;
beforeAll(() => {
  initSync({ module: readFileSync(require.resolve("@ironcalc/wasm/wasm_bg.wasm")) });
  model = new Model("vectors", "en", "UTC", "en");
  Object.values(cells).forEach((cell, index) => {
    const typed = typeof cell === "string" ? `'${cell}` : String(cell ?? "").toUpperCase();
    model.setUserInput(0, index + 1, 1, typed);
  });
});

function theirAnswer(formula: string): Answer {
  const cell = { sheet: 0, row: 1, column: 3, width: 1, height: 1 };
  model.setUserInput(0, cell.row, cell.column, `=${formula}`);
  model.updateRangeStyle(cell, "num_fmt", "0.00000000000000E+00");
  const shown = model.getFormattedCellValue(0, cell.row, cell.column);
  const type: number = model.getCellType(0, cell.row, cell.column);
  if (type === numberType) return Number(shown);
  if (type === logicalType) return shown === "TRUE";
  return errorsShown[shown] ?? (shown.startsWith("#") ? { error: "name" } : shown);
}

describe("another spreadsheet engine", () => {
  test.each(vectors)("answers %s likewise, or differs for a known reason", (formula, answer) => {
    const theirs = theirAnswer(formula);
    const difference = differences[formula];
    const expected = difference === undefined ? answer : difference.theirs;
    if (typeof expected === "number") expect(theirs).toBeCloseTo(expected, 12);
    else expect(theirs).toEqual(expected);
    if (difference !== undefined) expect(theirs).not.toEqual(answer);
  });

  test("every listed difference is about a case that is asked", () => {
    const asked = new Set(vectors.map(([formula]) => formula));
    expect(Object.keys(differences).filter((formula) => !asked.has(formula))).toEqual([]);
  });
});
