import { afterEach, describe, expect, test } from "@jest/globals";
import type { WorkbookChange } from "../../../src/workbook/workbook";
import { tell } from "../../fakehost/world";
import { drawing } from "../../workbook/drawings";
import { excelRig, type ExcelRig } from "./excelRig";

/** Long enough for what is not to be heard. */
const moment = (): Promise<void> => new Promise((done) => setTimeout(done, 40));

/** Waits until as much is heard as is expected, and a moment more for what is not. */
async function expectHeard(
  heard: readonly WorkbookChange[],
  expected: readonly WorkbookChange[],
): Promise<void> {
  for (let tries = 0; tries < 100 && heard.length < expected.length; tries++) await moment();
  await moment();
  expect(heard).toEqual(expected);
}

const stops: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const stop of stops.splice(0)) await stop();
});

async function watched(
  version = "1.9",
): Promise<{ rig: ExcelRig; heard: WorkbookChange[]; stop: () => Promise<void> }> {
  const rig = await excelRig({ sheets: [{ name: "One" }, { name: "Two" }] }, version);
  const heard: WorkbookChange[] = [];
  const stop = await rig.workbook.watch((change) => heard.push(change));
  stops.push(stop);
  return { rig, heard, stop };
}

describe("watching", () => {
  test("hundreds of changes on one sheet are told in a few requests", async () => {
    const { rig, heard } = await watched();
    rig.host.failWith({});
    for (let row = 1; row <= 200; row++) rig.host.person.type("Two", `A${row}`, row);
    for (let tries = 0; tries < 50 && heard.length === 0; tries++) await moment();
    await moment();
    expect(new Set(heard.map((each) => JSON.stringify(each)))).toEqual(
      new Set([JSON.stringify({ kind: "cells", sheet: "Two" })]),
    );
    expect(rig.host.requests.length).toBeLessThan(10);
  });

  test("a sheet is told by the name it has now", async () => {
    const { rig, heard } = await watched();
    rig.host.person.type("Two", "A1", 1);
    rig.host.person.rename("Two", "Three");
    await expectHeard(heard, [{ kind: "sheets" }, { kind: "cells", sheet: "Three" }]);
  });

  test("where Excel tells of a new name, it is told at once", async () => {
    const { rig, heard } = await watched("1.17");
    rig.host.person.rename("Two", "Three");
    await expectHeard(heard, [{ kind: "sheets" }]);
  });

  test("sheets that come and go", async () => {
    const { rig, heard } = await watched();
    rig.host.person.addSheet("New");
    await expectHeard(heard, [{ kind: "sheets" }]);
    rig.host.person.deleteSheet("New");
    await expectHeard(heard, [{ kind: "sheets" }, { kind: "sheets" }]);
  });

  test.each([
    ["B3", { row: 2, column: 1, rows: 1, columns: 1 }],
    ["B3:D9", { row: 2, column: 1, rows: 7, columns: 3 }],
    ["4:5", { row: 3, column: 0, rows: 2, columns: 16_384 }],
    ["AA:AB", { row: 0, column: 26, rows: 1_048_576, columns: 2 }],
  ])("the selection %s", async (range, expected) => {
    const { rig, heard } = await watched();
    rig.host.person.select("Two", range);
    const selection = { sheet: "Two", ...expected };
    await expectHeard(heard, [{ kind: "selection", selection }]);
    expect(await rig.workbook.selection()).toEqual(selection);
  });

  test("where a sheet comes to the front, the selection on it", async () => {
    const { rig, heard } = await watched();
    await rig.workbook.goTo({ sheet: "Two", row: 4, column: 2 });
    const selection = { sheet: "Two", row: 4, column: 2, rows: 1, columns: 1 };
    await expectHeard(heard, [{ kind: "selection", selection }]);
  });

  test("our own writing names no sheet that only we see", async () => {
    const { rig, heard } = await watched();
    const marked = (text: string) =>
      drawing("Hardware", { kind: "hardware", subject: "" }, [[text]]);
    await rig.workbook.write([marked("a")]);
    await rig.workbook.write([marked("b")]);
    await moment();
    const sheets = heard.flatMap((change) => (change.kind === "cells" ? [change.sheet] : []));
    expect(new Set(sheets)).toEqual(new Set(["Hardware"]));
  });

  test("what happens while Excel is busy is told when it answers again", async () => {
    const { rig, heard } = await watched();
    rig.host.failWith({ request: 1 });
    rig.host.person.type("One", "A1", 1);
    await moment();
    expect(heard).toEqual([]);
    await expectHeard(heard, [{ kind: "cells", sheet: "One" }]);
  });

  test("two that watch do not disturb each other", async () => {
    const { rig, heard, stop } = await watched();
    const second: WorkbookChange[] = [];
    stops.push(await rig.workbook.watch((change) => second.push(change)));
    await stop();
    rig.host.person.type("One", "A1", 1);
    await moment();
    expect(heard).toEqual([]);
    await expectHeard(second, [{ kind: "cells", sheet: "One" }]);
  });
});

test("to stop in a workbook that is closed is no error", async () => {
  const { rig, stop } = await watched();
  rig.host.close();
  await expect(stop()).resolves.toBeUndefined();
});

describe("while a chart sheet is in front", () => {
  test("what else happens is told, and no cell is selected", async () => {
    const { rig, heard } = await watched();
    rig.book.chartInFront = true;
    const [one] = rig.book.sheets;
    if (one !== undefined) tell(rig.host.world, "activated", one);
    rig.host.person.type("One", "A1", 1);
    await expectHeard(heard, [{ kind: "cells", sheet: "One" }]);
    expect(await rig.workbook.selection()).toBeNull();
    await expect(rig.workbook.activeSheet()).rejects.toThrow(/Go to a sheet with cells/);
  });
});

test("to stop while a cell is being edited waits until it is left", async () => {
  const { rig, stop } = await watched();
  rig.host.beginEdit();
  const stopped = stop();
  await moment();
  rig.host.endEdit();
  await stopped;
  expect(rig.host.world.listening.size).toBe(0);
});

test("no cells are selected where a chart is", async () => {
  const rig = await excelRig({ sheets: [{ name: "One" }] });
  rig.book.selection = [];
  expect(await rig.workbook.selection()).toBeNull();
});
