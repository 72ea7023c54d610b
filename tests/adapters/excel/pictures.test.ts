/** Pictures in Excel, which are words there, and what a file brought along. */
import { describe, expect, test } from "@jest/globals";
import type { Drawing, DrawnPicture } from "../../../src/workbook/drawing";
import { findSheet, type FakeSheet } from "../../fakehost/book";
import { drawing } from "../../workbook/drawings";
import { excelRig, type ExcelRig } from "./excelRig";
import { lookAt } from "./rigBook";

const mark = { kind: "packing", subject: "Job A" };
const picture: DrawnPicture = {
  row: 1,
  column: 0,
  width: 100,
  height: 50,
  marks: [],
  title: "Elevation of A-1",
  description: "Sliding door A-1, closed. Parts: 2 panels.",
};
const packing = (heading: string): Drawing =>
  drawing("Packing", mark, [[heading], [null], ["HN 1/4"]], {
    columnWidths: [10, 20],
    pictures: [picture],
  });

async function written(rig: ExcelRig, ...drawings: readonly Drawing[]) {
  const outcome = await rig.workbook.write(drawings);
  if (!outcome.ok) throw new Error(outcome.error.message);
  return outcome.value;
}

function sheetNamed(rig: ExcelRig, name: string): FakeSheet {
  const sheet = findSheet(rig.book, name);
  if (sheet === undefined) throw new Error(`No sheet ${name}`);
  return sheet;
}

describe.each(["1.9", "1.15"])("with ExcelApi %s", (version) => {
  test("a picture's words stand in its place, and the outcome says so", async () => {
    const rig = await excelRig({ sheets: [{ name: "Schedule" }] }, version);
    const plain = drawing("Loading", { kind: "loading", subject: "Job A" }, [["x"]]);
    const outcome = await written(rig, packing("Packing list"), plain);
    expect(outcome.map(({ pictures }) => pictures)).toEqual(["words", undefined]);
    expect(lookAt(rig.book)[1]?.cells).toEqual({
      A1: "Packing list",
      A2: "No picture here. Elevation of A-1. Sliding door A-1, closed. Parts: 2 panels.",
      A3: "HN 1/4",
    });
    expect(sheetNamed(rig, "Packing").merges).toEqual([{ row: 1, column: 0, rows: 1, columns: 2 }]);
    const again = await written(rig, packing("Packing list"));
    expect(again).toMatchObject([{ was: "replaced", keptAs: null, pictures: "words" }]);
  });

  test("a picture beside cells of its own row leaves them as they are", async () => {
    const rig = await excelRig({ sheets: [{ name: "Schedule" }] }, version);
    await written(rig, { ...packing("x"), pictures: [{ ...picture, row: 2, column: 1 }] });
    expect(lookAt(rig.book)[1]?.cells).toEqual({ A1: "x", A3: "HN 1/4" });
  });

  test("pictures that a file brought along go with the counts that they show; a person's stay", async () => {
    const rig = await excelRig({ sheets: [{ name: "Schedule" }] }, version);
    await written(rig, packing("First"));
    sheetNamed(rig, "Packing").shapes = [
      { id: "{P1}", name: "Cribsheet picture 1" },
      { id: "{P2}", name: "Picture 2" },
    ];
    await rig.type("Packing", "B3", "counted twice");
    const [sheet] = await written(rig, packing("Second"));
    expect(sheetNamed(rig, "Packing").shapes.map(({ name }) => name)).toEqual(["Picture 2"]);
    expect(sheetNamed(rig, sheet?.keptAs ?? "").shapes).toHaveLength(2);
  });
});
