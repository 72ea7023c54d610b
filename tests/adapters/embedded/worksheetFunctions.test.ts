import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";
import {
  embeddedWorkbook,
  type EmbeddedWorkbook,
} from "../../../src/adapters/embedded/embeddedWorkbook";
import { startEngine } from "../../../src/adapters/embedded/engine";
import { functionFaults } from "../../../src/adapters/embedded/functionFaults";
import { recalculateFunctions } from "../../../src/adapters/embedded/recalculating";
import {
  registerFunctions,
  type FunctionInput,
  type GridFunction,
} from "../../../src/adapters/embedded/worksheetFunctions";
import type { CellValue } from "../../../src/core/base/cell";
import { err, ok } from "../../../src/core/base/result";
import { cellAt, rigSnapshot } from "../../workbook/rig";

const engine = startEngine();
afterAll(() => engine.univer.dispose());

let factor = 2;
let asked: (readonly FunctionInput[])[] = [];

const argument = (name: string, optional = false) => ({ name, says: name, optional });
const functions: readonly GridFunction[] = [
  {
    name: "CRIB.TIMES",
    says: "A number times the factor.",
    arguments: [argument("number"), argument("more", true)],
    example: "=CRIB.TIMES(2)",
    run: (inputs) => {
      asked.push(inputs);
      const [number] = inputs;
      return typeof number === "number"
        ? ok(number * factor)
        : err({ code: "value", message: "number: not a number" });
    },
  },
  {
    name: "CRIB.LIST",
    says: "Rows.",
    arguments: [],
    example: "=CRIB.LIST()",
    run: () => ok([["a", 1], [null, true], ["c"]]),
  },
  {
    name: "CRIB.NONE",
    says: "Never an answer.",
    arguments: [],
    example: "=CRIB.NONE()",
    run: () => err({ code: "na", message: "none" }),
  },
  {
    name: "CRIB.BREAKS",
    says: "A fault of ours.",
    arguments: [],
    example: "=CRIB.BREAKS()",
    run: () => {
      throw new Error("broken");
    },
  },
];

const error = (text: string): CellValue => ({ kind: "error", error: text });
const formula = (text: string) => ({ formula: text, result: null }) as const;

describe("our functions in the grid", () => {
  let workbook: EmbeddedWorkbook;
  const cell = async (name: string): Promise<CellValue> => {
    const read = await workbook.read({ kind: "sheet", sheet: "Calc" });
    if (!read.ok) throw new Error(read.error.message);
    const { row, column } = cellAt(name);
    return read.value.rows[row - read.value.row]?.[column - read.value.column] ?? null;
  };

  beforeAll(async () => {
    registerFunctions(engine, functions, functionFaults(engine));
    workbook = embeddedWorkbook(
      engine,
      rigSnapshot({
        sheets: [
          {
            name: "Calc",
            cells: {
              A1: 4,
              A2: "x",
              C1: formula("=CRIB.TIMES(A1)"),
              C2: formula("=crib.times(A2)"),
              C3: formula("=CRIB.TIMES(A3)"),
              C4: formula("=CRIB.TIMES(1/0)"),
              C5: formula("=CRIB.NONE()"),
              C6: formula("=CRIB.BREAKS()"),
              C7: formula('=IFERROR(CRIB.NONE(),"caught")'),
              C8: formula("=CRIB.TIMES(A1:A3)"),
              C9: formula("=1+1"),
              C10: formula("=CRIB.TIMES(1,)+CRIB.TIMES(2)"),
              E1: formula("=CRIB.LIST()"),
              E6: formula("=SUM(F1:F3)"),
            },
          },
        ],
      }),
    );
    await engine.calculation.done();
  });

  test.each([
    ["answers from a cell", "C1", 8],
    ["refuses a wrong argument, whatever the letters' case", "C2", error("#VALUE!")],
    ["does not take a blank cell for zero", "C3", error("#VALUE!")],
    ["passes an argument's error on", "C4", error("#DIV/0!")],
    ["has no answer", "C5", error("#N/A")],
    ["breaks alone", "C6", error("#VALUE!")],
    ["can be caught", "C7", "caught"],
    ["is given a range as rows", "C8", error("#VALUE!")],
    ["lets the others be calculated", "C9", 2],
    ["may leave an argument out", "C10", 6],
  ])("a function that %s", async (_, name, value) => {
    expect(await cell(name)).toEqual(value);
  });

  test("hands over what it was given", () => {
    expect(asked).toContainEqual([4, null]);
    expect(asked).toContainEqual(["x", null]);
    expect(asked).toContainEqual([null, null]);
    expect(asked).toContainEqual([[[4], ["x"], [null]], null]);
  });

  test("rows spill, and a blank in them stays blank", async () => {
    expect(await Promise.all(["E1", "F1", "E2", "F2", "E3", "F3"].map(cell))).toEqual([
      "a",
      1,
      null,
      true,
      "c",
      null,
    ]);
  });

  test("only cells with our functions are worked out anew, and what hangs on them", async () => {
    factor = 10;
    asked = [];
    recalculateFunctions(engine, functions);
    await engine.calculation.done();
    expect(await cell("C1")).toBe(40);
    expect(await cell("C10")).toBe(30);
    expect(await cell("C9")).toBe(2);
    expect(asked.length).toBeGreaterThan(0);
  });

  test("a snapshot keeps the formula and the size of what it fills", () => {
    const sheet = workbook.snapshot().sheets[0];
    expect(sheet?.rows[0]?.[4]).toEqual({
      value: "a",
      formula: "=CRIB.LIST()",
      spill: { rows: 3, columns: 2 },
    });
    expect(sheet?.rows[2]?.[4]).toEqual({ value: "c" });
  });
});
