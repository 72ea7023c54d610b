import { afterEach, beforeEach, describe, expect, test } from "@jest/globals";
import { functionTable } from "../../../src/functions/functionTable";
import { excelFunctions } from "../../../src/main/excel/excelFunctions";
import { excelRig, type ExcelRig } from "../../adapters/excel/excelRig";
import { goodRow, scheduleSheet } from "./schedules";

type Called = (...given: readonly unknown[]) => Promise<unknown>;

/** Excel's own class of errors that carry a message. */
class ToldError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

let registered: Map<string, Called>;
let rig: ExcelRig;
let count = 0;

beforeEach(async () => {
  // An object model of its own: what other tests left listening hears nothing of this.
  count++;
  rig = await excelRig(
    { sheets: [scheduleSheet("North", [goodRow("Job North", "N1")])] },
    `1.${9 + count}`,
  );
  registered = new Map();
  Object.assign(globalThis, {
    CustomFunctions: {
      associate: (id: string, act: Called) => registered.set(id, act),
      Error: ToldError,
      ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
    },
  });
});
afterEach(() => {
  Reflect.deleteProperty(globalThis, "CustomFunctions");
});

const call = (name: string, ...given: readonly unknown[]): Promise<unknown> => {
  const act = registered.get(name);
  if (act === undefined) throw new Error(`Not registered: ${name}`);
  // Excel passes an object about the call behind the arguments.
  const row = functionTable.find((each) => each.name === name);
  const missing = Array.from({ length: (row?.arguments.length ?? 0) - given.length }, () => null);
  return act(...given, ...missing, { functionName: name });
};

const kit = ["sliding door", 96, 84, 84, true, "concrete"];

describe("worksheet functions in Excel", () => {
  test("every row of the table is registered under its id", () => {
    excelFunctions();
    expect([...registered.keys()]).toEqual(functionTable.map(({ name }) => name));
  });

  test("one that is called before the workbook is read answers afterwards", async () => {
    const functions = excelFunctions();
    const [counting] = functionTable.filter(({ answers }) => answers === "number");
    if (counting === undefined) throw new Error("No function that answers a number");
    const early = call(counting.name, "HN 1/4", ...kit);
    await functions.connect(rig.workbook);
    expect(typeof (await early)).toBe("number");
  });

  test("wrong input is an error of Excel's with a message that names the argument", async () => {
    const functions = excelFunctions();
    await functions.connect(rig.workbook);
    const [counting] = functionTable.filter(({ answers }) => answers === "number");
    const asked = call(counting?.name ?? "", "HN 1/4", "sliding door", "wide", 84, 84);
    await expect(asked).rejects.toBeInstanceOf(ToldError);
    await expect(asked).rejects.toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("“wide”"),
    });
  });

  test("the workbook is calculated again when its settings change, if a cell asked", async () => {
    const functions = excelFunctions();
    await functions.connect(rig.workbook);
    const { calculations } = rig.host;
    const change = async (unit: string): Promise<void> => {
      await rig.workbook.writeSetting("settings", JSON.stringify({ unit }));
      rig.host.person.addSheet(`Notes ${unit}`);
      await new Promise((done) => setTimeout(done, 900));
    };
    await change("mm");
    expect(calculations()).toBe(0);
    const [counting] = functionTable.filter(({ answers }) => answers === "number");
    await call(counting?.name ?? "", "HN 1/4", "sliding door", 2438, 2134, 2134, true, "concrete");
    await change("in");
    expect(calculations()).toBe(1);
  });

  test("without the part of Office.js for functions the rest works", () => {
    Reflect.deleteProperty(globalThis, "CustomFunctions");
    expect(() => excelFunctions()).not.toThrow();
  });
});
