/** Tables on sheets of ours: the same table stays, and with it the formulas that name it. */
import { describe, expect, test } from "@jest/globals";
import type { Drawing } from "../../../src/workbook/drawing";
import { areaAddress } from "../../fakehost/areas";
import { drawing } from "../../workbook/drawings";
import { excelRig, type ExcelRig } from "./excelRig";
import { lookAt } from "./rigBook";

const mark = { kind: "hardware", subject: "Job A" };

/** A title, headings and rows of two columns in a table, and a total below. */
const lines = (count: number, top = 1): Drawing =>
  drawing(
    "Hardware",
    mark,
    [
      ...Array.from({ length: top }, () => ["A title"]),
      ["Item", "Count"],
      ...Array.from({ length: count }, (_, row) => [`Item ${row}`, row + 1]),
      ["Total", "=SUM(Lines[Count])"],
    ],
    {
      tables: [
        { name: "Lines", headingRow: top, lastRow: top + count, firstColumn: 0, lastColumn: 1 },
      ],
    },
  );

async function rigWithLines(version: string): Promise<ExcelRig> {
  const rig = await excelRig({ sheets: [{ name: "Schedule" }] }, version);
  const outcome = await rig.workbook.write([lines(3)]);
  if (!outcome.ok) throw new Error(outcome.error.message);
  await rig.type("Schedule", "A1", { formula: "=SUM(Lines[Count])", result: 6 });
  await rig.type("Schedule", "A2", { formula: "=Hardware!B3", result: 1 });
  return rig;
}

const valueOf = async ({ workbook }: ExcelRig): Promise<unknown> => {
  const block = await workbook.read({ kind: "sheet", sheet: "Schedule" });
  return block.ok ? block.value.rows.map((cells) => cells[0]) : block.error;
};

const tablesOf = ({ book }: ExcelRig): unknown =>
  book.tables.map(({ name, area, sheet }) => [name, sheet.name, areaAddress(area)]);

describe.each(["1.9", "1.15"])("with ExcelApi %s", (version) => {
  const isResized = version === "1.15";

  test.each([
    ["grows", 5, "A2:B7", 15],
    ["shrinks", 1, "A2:B3", 1],
    ["stays", 3, "A2:B5", 6],
  ])("a table that %s keeps its name, and formulas keep what they point at", async (...row) => {
    const [, count, address, sum] = row;
    const rig = await rigWithLines(version);
    expect(await rig.workbook.write([lines(count)])).toMatchObject({
      ok: true,
      value: [{ was: "replaced", keptAs: null }],
    });
    expect(tablesOf(rig)).toEqual([["Lines", "Hardware", address]]);
    const [schedule, ours] = lookAt(rig.book).map(({ cells }) => cells);
    // Before 1.13 a table can't be resized: what named it then names the cells that it had.
    const isSame = isResized || count === 3;
    expect(schedule).toEqual({
      A1: { formula: isSame ? "=SUM(Lines[Count])" : "=SUM('Hardware'!$B$3:$B$5)" },
      A2: { formula: "=Hardware!B3" },
    });
    if (isSame) expect(await valueOf(rig)).toEqual([sum, 1]);
    expect(ours?.[`B${count + 3}`]).toEqual({ formula: "=SUM(Lines[Count])" });
    expect(ours).not.toHaveProperty(`A${count + 4}`);
  });

  test("a table whose headings moved is made anew, and formulas keep its cells", async () => {
    const rig = await rigWithLines(version);
    expect(await rig.workbook.write([lines(3, 2)])).toMatchObject({ ok: true });
    expect(tablesOf(rig)).toEqual([["Lines", "Hardware", "A3:B6"]]);
    expect(lookAt(rig.book)[0]?.cells["A1"]).toEqual({ formula: "=SUM('Hardware'!$B$3:$B$5)" });
  });

  test("a table that a person filtered shows all its new rows", async () => {
    const rig = await rigWithLines(version);
    rig.book.sheets[1]?.filteredRows.add(3);
    expect(await rig.workbook.write([lines(5)])).toMatchObject({
      ok: true,
      value: [{ keptAs: null }],
    });
    expect(rig.book.sheets[1]?.filteredRows.size).toBe(0);
    expect(lookAt(rig.book)[1]?.cells).toMatchObject({ A7: "Item 4" });
  });

  test("a table of a person's own on our sheet goes with the kept sheet", async () => {
    const rig = await rigWithLines(version);
    await rig.type("Hardware", "E1", "mine");
    await rig.type("Hardware", "E2", 5);
    const [, sheet] = rig.book.sheets;
    if (sheet === undefined) throw new Error("No sheet");
    const area = { row: 0, column: 4, rows: 2, columns: 1 };
    rig.book.tables.push({ id: "{T99}", name: "Mine", sheet, area, looks: { showTotals: false } });
    expect(await rig.workbook.write([lines(4)])).toMatchObject({
      ok: true,
      value: [{ keptAs: "Hardware (kept)" }],
    });
    expect(tablesOf(rig)).toContainEqual(["Lines", "Hardware", "A2:B6"]);
    const kept = rig.book.tables.filter((table) => table.sheet.name === "Hardware (kept)");
    expect(kept.map((table) => areaAddress(table.area))).toEqual(["A2:B5", "E1:E2"]);
  });
});

test("a total row is not read, a table without one is read whole", async () => {
  const rig = await excelRig({
    sheets: [
      {
        name: "Doors",
        cells: { A1: "Mark", A2: "D1", A3: "Total" },
        tables: { Doors: "A1:A3" },
      },
    ],
  });
  const read = async (): Promise<unknown> => {
    const block = await rig.workbook.read({ kind: "table", table: "doors" });
    return block.ok ? block.value.rows : block.error;
  };
  expect(await read()).toEqual([["Mark"], ["D1"], ["Total"]]);
  const [table] = rig.book.tables;
  if (table !== undefined) table.looks["showTotals"] = true;
  expect(await read()).toEqual([["Mark"], ["D1"]]);
});
