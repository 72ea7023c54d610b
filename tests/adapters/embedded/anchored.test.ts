/** Pictures and charts kept for the file, while a person inserts and deletes rows and columns. */
import { afterAll, describe, expect, test } from "@jest/globals";
import { RedoCommand, UndoCommand } from "@univerjs/core";
import { embeddedWorkbook } from "../../../src/adapters/embedded/embeddedWorkbook";
import { openGridWorkbook, startEngine } from "../../../src/adapters/embedded/engine";
import { openFile } from "../../../src/adapters/xlsx/openFile";
import { snapshotBytes } from "../../../src/adapters/xlsx/snapshotBytes";
import { workbookOf, blankSheet } from "../../../src/workbook/blankSheet";
import type { DrawnChart } from "../../../src/workbook/drawing";
import type { SheetSnapshot } from "../../../src/workbook/snapshot";
import { drawing } from "../../workbook/drawings";

const engine = startEngine();
afterAll(() => engine.univer.dispose());

const chart: DrawnChart = {
  row: 6,
  column: 0,
  width: 400,
  height: 200,
  title: "Margin and target",
  firstRow: 1,
  lastRow: 3,
  nameColumn: 0,
  valueColumns: [1, 2],
  headingRow: 0,
  format: "percent",
};
const margins = drawing(
  "Margins",
  { kind: "margins", subject: "" },
  [
    ["Job", "Margin", "Target"],
    ["North", 0.25, 0.2],
    ["South", 0.1, 0.2],
    ["West", -0.1, 0.2],
  ],
  {
    charts: [chart],
    pictures: [
      {
        row: 5,
        column: 1,
        width: 100,
        height: 50,
        title: "Elevation",
        description: "x",
        marks: [],
      },
    ],
  },
);

async function open() {
  const workbook = embeddedWorkbook(engine, workbookOf("Job.xlsx", [blankSheet("Schedule")]));
  const outcome = await workbook.write([margins]);
  if (!outcome.ok) throw new Error(outcome.error.message);
  const book = openGridWorkbook(engine);
  const subUnitId = book.getSheetBySheetName("Margins")?.getSheetId() ?? "";
  const run = async (id: string, more: object = {}): Promise<void> => {
    const params = { unitId: book.getUnitId(), subUnitId, ...more };
    expect(await engine.commands.executeCommand(id, params)).toBe(true);
  };
  const ours = (): SheetSnapshot | undefined =>
    workbook.snapshot().sheets.find(({ name }) => name === "Margins");
  return { workbook, outcome: outcome.value, run, ours };
}

/** What the grid's own menus do. */
const person = {
  insertRow: "sheet.command.insert-row",
  removeRow: "sheet.command.remove-row",
  insertCol: "sheet.command.insert-col",
  removeCol: "sheet.command.remove-col",
};

const rows = (startRow: number, endRow: number) => ({
  range: { startRow, endRow, startColumn: 0, endColumn: 10 },
});
const columns = (startColumn: number, endColumn: number) => ({
  range: { startRow: 0, endRow: 100, startColumn, endColumn },
});

describe("what lies over the cells of a written sheet", () => {
  test("is told as kept for the file, and is in the file that is saved", async () => {
    const { workbook, outcome } = await open();
    expect(outcome).toMatchObject([{ pictures: "kept", charts: "kept" }]);
    const saved = openFile(snapshotBytes(workbook.snapshot()), "Job.xlsx");
    const sheet = saved.ok ? saved.value.snapshot().sheets[1] : undefined;
    expect(sheet?.charts).toEqual([chart]);
    expect(sheet?.pictures).toHaveLength(1);
    expect(saved.ok && saved.value.snapshot().leftOut).toEqual([]);
  });

  test("is kept when that file is opened here and saved once more", async () => {
    const { workbook } = await open();
    const saved = openFile(snapshotBytes(workbook.snapshot()), "Job.xlsx");
    if (!saved.ok) throw new Error(saved.error.message);
    workbook.open(saved.value.snapshot());
    const [, sheet] = workbook.snapshot().sheets;
    expect([sheet?.charts, sheet?.pictures?.length]).toEqual([[chart], 1]);
  });

  test("goes down with rows that come above and among its numbers, and back with undo", async () => {
    const { run, ours } = await open();
    await run(person.insertRow, { ...rows(2, 3), direction: 2, cellValue: {} });
    const moved = { ...chart, row: 8, lastRow: 5 };
    expect([ours()?.charts, ours()?.pictures?.[0]?.row]).toEqual([[moved], 7]);
    await engine.commands.executeCommand(UndoCommand.id);
    expect([ours()?.charts, ours()?.pictures?.[0]?.row]).toEqual([[chart], 5]);
    await engine.commands.executeCommand(RedoCommand.id);
    expect(ours()?.charts).toEqual([moved]);
  });

  test("shrinks with rows that go, and is gone when all of them are", async () => {
    const { run, ours } = await open();
    await run(person.removeRow, rows(3, 3));
    expect(ours()?.charts).toEqual([{ ...chart, row: 5, lastRow: 2 }]);
    await run(person.removeRow, rows(1, 2));
    expect(ours()?.charts).toEqual([]);
  });

  test("follows columns too", async () => {
    const { run, ours } = await open();
    await run(person.insertCol, { ...columns(1, 1), direction: 1, cellValue: {} });
    expect(ours()?.charts).toEqual([{ ...chart, valueColumns: [2, 3] }]);
    expect(ours()?.pictures?.[0]?.column).toBe(2);
    await run(person.removeCol, columns(2, 2));
    expect(ours()?.charts).toEqual([{ ...chart, valueColumns: [2] }]);
  });
});

test("what the opened file had and this page cannot hold is still known when it is saved", () => {
  const opened = { ...workbookOf("Job.xlsx", [blankSheet("Plan")]), leftOut: ["link on “Plan”"] };
  const workbook = embeddedWorkbook(engine, opened);
  expect(workbook.snapshot().leftOut).toEqual(["link on “Plan”"]);
  workbook.open(workbookOf("Other.xlsx", [blankSheet("Plan")]));
  expect(workbook.snapshot().leftOut).toEqual([]);
});
