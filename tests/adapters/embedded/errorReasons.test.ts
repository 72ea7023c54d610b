import { InsertRowMutation } from "@univerjs/sheets";
import { afterAll, beforeEach, describe, expect, test } from "@jest/globals";
import { startEngine, openGridWorkbook } from "../../../src/adapters/embedded/engine";
import { watchErrorReasons } from "../../../src/adapters/embedded/errorReasons";
import { functionFaults } from "../../../src/adapters/embedded/functionFaults";
import { sheetIds } from "../../../src/adapters/embedded/sheetParts";
import {
  registerFunctions,
  type GridFunction,
} from "../../../src/adapters/embedded/worksheetFunctions";
import { err, ok } from "../../../src/core/base/result";
import { cellAt, type Rig } from "../../workbook/rig";
import { gridRig } from "./gridRig";

const engine = startEngine();
afterAll(() => engine.univer.dispose());

const functions: readonly GridFunction[] = [
  {
    name: "CRIB.TWICE",
    says: "A number twice.",
    arguments: [{ name: "number", says: "a number", optional: false }],
    example: "=CRIB.TWICE(2)",
    run: ([given = null]) =>
      typeof given === "number"
        ? ok(given * 2)
        : err({
            code: given === "none" ? "na" : "value",
            message: `The argument number is wrong: ${JSON.stringify(given)}.`,
          }),
  },
];
const faults = functionFaults(engine);
registerFunctions(engine, functions, faults);
let told: (string | null)[] = [];
watchErrorReasons(engine, faults, (words) => told.push(words));

const formula = (text: string) => ({ formula: text, result: null }) as const;

describe("why the selected cell shows an error", () => {
  let rig: Rig;
  const select = async (name: string): Promise<string | null | undefined> => {
    await rig.workbook.goTo({ sheet: "Calc", ...cellAt(name) });
    await settled();
    return told.at(-1);
  };
  const settled = async (): Promise<void> => {
    await engine.calculation.done();
    await new Promise((resolve) => setTimeout(resolve, 20));
  };

  beforeEach(async () => {
    rig = gridRig(engine, {
      sheets: [
        {
          name: "Calc",
          cells: {
            A1: "x",
            A2: "none",
            B1: formula("=CRIB.TWICE(A1)"),
            B2: formula("=CRIB.TWICE(A2)"),
            B3: formula("=1/0"),
            B4: formula("=IFERROR(CRIB.TWICE(A1),7)"),
            B5: formula('=CRIB.TWICE("first")+CRIB.TWICE(1)'),
            B6: formula('=CRIB.TWICE("fixed")'),
          },
        },
      ],
    });
    await settled();
    await select("D9");
    told = [];
  });

  test.each([
    ["B1", 'B1 shows #VALUE! The argument number is wrong: "x".'],
    ["B2", 'B2 shows #N/A The argument number is wrong: "none".'],
    ["B5", 'B5 shows #VALUE! The argument number is wrong: "first".'],
    ["B3", undefined],
    ["B4", undefined],
    ["A1", undefined],
  ])("%s: %s", async (name, words) => {
    expect(await select(name)).toBe(words);
  });

  test("goes when another cell is selected, and when the cell is mended", async () => {
    await select("B1");
    expect(await select("A1")).toBeNull();
    await select("B1");
    await rig.type("Calc", "A1", 4);
    await settled();
    expect(told.at(-1)).toBeNull();
  });

  test("follows a cell that moves with its row", async () => {
    const ids = sheetIds(openGridWorkbook(engine).getActiveSheet(true) ?? never());
    const range = { startRow: 0, endRow: 0, startColumn: 0, endColumn: 9 };
    engine.commands.syncExecuteCommand(InsertRowMutation.id, { ...ids, range });
    await settled();
    expect(await select("B7")).toBe('B7 shows #VALUE! The argument number is wrong: "fixed".');
  });
});

const never = (): never => {
  throw new Error("There is no sheet.");
};
