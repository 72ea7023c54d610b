import { afterAll, afterEach, beforeEach, describe, expect, test } from "@jest/globals";
import { InsertRowMutation, SetWorksheetNameMutation } from "@univerjs/sheets";
import {
  embeddedWorkbook,
  type EmbeddedWorkbook,
} from "../../../src/adapters/embedded/embeddedWorkbook";
import { openGridWorkbook, startEngine } from "../../../src/adapters/embedded/engine";
import type { WorkbookChange } from "../../../src/workbook/workbook";
import { rigSnapshot, type RigSetup } from "../../workbook/rig";
import { gridRig } from "./gridRig";

const engine = startEngine();
afterAll(() => engine.univer.dispose());

const setup: RigSetup = {
  sheets: [
    { name: "Schedule", cells: { A1: 1 } },
    { name: "Price", cells: { A1: { formula: "=Schedule!A1*2", result: 2 } } },
  ],
};

let workbook: EmbeddedWorkbook;
let heard: WorkbookChange[] = [];
let stop: () => Promise<void>;
beforeEach(async () => {
  workbook = embeddedWorkbook(engine, rigSnapshot(setup));
  await workbook.calculated();
  heard = [];
  stop = await workbook.watch((change) => heard.push(change));
});
afterEach(() => stop());

const told = (): Promise<void> => new Promise((done) => setTimeout(done, 20));

describe("who watches the grid hears", () => {
  test("of cells that change because others did, once they are worked out", async () => {
    const rig = gridRig(engine, setup);
    await rig.type("Schedule", "A1", 5);
    await rig.workbook.calculated();
    await told();
    await rig.close();
    expect(heard).toContainEqual({ kind: "cells", sheet: "Schedule" });
    expect(heard).toContainEqual({ kind: "cells", sheet: "Price" });
  });

  test("of rows that a person puts in", async () => {
    const [sheet] = openGridWorkbook(engine).getSheets();
    engine.commands.syncExecuteCommand(InsertRowMutation.id, {
      unitId: sheet?.getUnitId(),
      subUnitId: sheet?.getSheetId(),
      range: { startRow: 0, endRow: 0, startColumn: 0, endColumn: 5 },
    });
    await told();
    expect(heard).toContainEqual({ kind: "cells", sheet: "Schedule" });
  });

  test("where the selection goes", async () => {
    await workbook.goTo({ sheet: "Price", row: 3, column: 1 });
    await told();
    const selection = { sheet: "Price", row: 3, column: 1, rows: 1, columns: 1 };
    expect(heard).toContainEqual({ kind: "selection", selection });
    expect(await workbook.selection()).toEqual(selection);
  });

  test("of a sheet's new name, and of another workbook", async () => {
    const [sheet] = openGridWorkbook(engine).getSheets();
    engine.commands.syncExecuteCommand(SetWorksheetNameMutation.id, {
      unitId: sheet?.getUnitId(),
      subUnitId: sheet?.getSheetId(),
      name: "Doors",
    });
    await told();
    expect(heard).toEqual([{ kind: "sheets" }]);
    workbook.open(rigSnapshot({ sheets: [{ name: "Other" }] }));
    expect(heard.slice(1)).toEqual([{ kind: "sheets" }]);
  });
});

describe("who watches everything hears", () => {
  test("what was typed apart from what was worked out, and settings too", async () => {
    const all: boolean[] = [];
    const stopAll = workbook.watchAll((typed) => all.push(typed));
    await workbook.writeSetting("unit", "mm");
    expect(all).toEqual([true]);
    const rig = gridRig(engine, setup);
    await rig.workbook.calculated();
    all.length = 0;
    await rig.type("Schedule", "A1", 7);
    expect(all).toEqual([true]);
    await rig.workbook.calculated();
    await rig.close();
    expect(all.slice(1)).toContain(false);
    expect(all.slice(1)).not.toContain(true);
    stopAll();
  });
});
