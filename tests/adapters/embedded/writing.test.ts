import { afterAll, afterEach, describe, expect, test } from "@jest/globals";
import { startEngine } from "../../../src/adapters/embedded/engine";
import { drawing } from "../../workbook/drawings";
import type { Rig, RigSetup } from "../../workbook/rig";
import { gridRig } from "./gridRig";

const engine = startEngine();
afterAll(() => engine.univer.dispose());

let rig: Rig | null = null;
const rigOf = (setup: RigSetup): Rig => (rig = gridRig(engine, setup));
afterEach(() => rig?.close());

const table = { headingRow: 0, lastRow: 1, firstColumn: 0, lastColumn: 1 };
const hardware = drawing(
  "Hardware",
  { kind: "hardware", subject: "" },
  [
    ["Item", "Quantity"],
    ["HN 1/4", 19],
    ["Total", "=SUM(Lines[Quantity])"],
    ["Again", "=Hardware!B3"],
  ],
  { tables: [{ name: "Lines", ...table }] },
);
const price = drawing("Price", { kind: "price", subject: "" }, [
  ["=Hardware!B3*2", '="Hardware!B3"'],
]);

/** The name and the formulas of each sheet of ours. */
const formulas = async (from: Rig): Promise<Record<string, unknown>> =>
  Object.fromEntries(
    (await from.look())
      .slice(1)
      .map(({ name, cells }) => [
        name,
        Object.values(cells).flatMap((cell) => (typeof cell === "object" ? cell.formula : [])),
      ]),
  );

describe("formulas between sheets of ours", () => {
  test("say the names that the sheets and tables got", async () => {
    const found = rigOf({
      sheets: [{ name: "Hardware", cells: { A1: "mine" }, tables: { Lines: "A1:A2" } }],
    });
    for (const was of ["new", "replaced"]) {
      expect(await found.workbook.write([hardware, price])).toMatchObject({
        ok: true,
        value: [
          { name: "Hardware (2)", was, keptAs: null },
          { name: "Price", was, keptAs: null },
        ],
      });
      expect(await formulas(found)).toEqual({
        "Hardware (2)": ["=SUM(Lines_2[Quantity])", "='Hardware (2)'!B3"],
        Price: ["='Hardware (2)'!B3*2", '="Hardware!B3"'],
      });
    }
  });

  test("stay with a sheet that is set aside, and with the one that takes its place", async () => {
    const found = rigOf({ sheets: [{ name: "Schedule" }] });
    await found.workbook.write([hardware, price]);
    await found.type("Hardware", "B2", 20);
    expect(await found.workbook.write([hardware])).toMatchObject({
      ok: true,
      value: [{ name: "Hardware", keptAs: "Hardware (kept)" }],
    });
    expect(await formulas(found)).toEqual({
      Hardware: ["=SUM(Lines[Quantity])", "=Hardware!B3"],
      "Hardware (kept)": ["=SUM(Lines_2[Quantity])", "='Hardware (kept)'!B3"],
      Price: ["=Hardware!B3*2", '="Hardware!B3"'],
    });
  });
});
