import { describe, expect, test } from "@jest/globals";
import { packingDrawings, writePackingLists } from "../../../src/app/writing/packingLists";
import { defaultSettings, readSettings, writeSettings } from "../../../src/app/settings";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../../../src/app/reading/workbookTakeOff";
import { plainLabelGrid } from "../../../src/sheets/crew/labelGrid";
import type { Workbook } from "../../../src/workbook/workbook";
import { demoWorkbook, scheduleRows, workbookOf } from "../typedWorkbook";

async function taken(workbook: Workbook): Promise<WorkbookTakeOff> {
  const takeOff = await takeOffWorkbook(workbook, defaultSettings);
  if (!takeOff.ok) throw new Error(takeOff.error.message);
  return takeOff.value;
}

const crib = () => workbookOf({ Schedule: scheduleRows("A-1 | 2 | sliding door | 8' | 7' | 8'") });

describe("packing lists of a workbook", () => {
  test("are three sheets for each job, which are known again and replaced", async () => {
    const workbook = crib();
    const first = await writePackingLists(workbook, await taken(workbook), defaultSettings);
    expect(first.ok && first.value.map(({ name, was }) => [name, was])).toEqual([
      ["Packing Crib", "new"],
      ["Labels Crib", "new"],
      ["Loading Crib", "new"],
    ]);
    const again = await writePackingLists(workbook, await taken(workbook), defaultSettings);
    expect(again.ok && again.value.map(({ was, keptAs }) => [was, keptAs])).toEqual([
      ["replaced", null],
      ["replaced", null],
      ["replaced", null],
    ]);
    const { sheets } = workbook.snapshot();
    expect(sheets.map(({ name }) => name)).toEqual([
      "Schedule",
      "Packing Crib",
      "Labels Crib",
      "Loading Crib",
    ]);
    expect(sheets[1]?.pictures).toHaveLength(2);
  });

  test("are one of each for all jobs where the settings say so", async () => {
    const takeOff = await taken(await demoWorkbook());
    const names = packingDrawings(takeOff, { ...defaultSettings, sheetPerJob: false }).map(
      ({ name }) => name,
    );
    expect(names).toEqual(["Packing", "Labels", "Loading"]);
  });

  test("are only of the kinds and jobs that are asked for", async () => {
    const takeOff = await taken(await demoWorkbook());
    const drawings = packingDrawings(takeOff, defaultSettings, {
      kinds: ["loading"],
      isIn: ({ job }) => job.startsWith("Tool crib"),
    });
    expect(drawings.map(({ name }) => name)).toEqual(["Loading Tool crib, Alder plant"]);
  });

  test("that a person typed into are kept beside the new ones", async () => {
    const workbook = crib();
    await writePackingLists(workbook, await taken(workbook), defaultSettings);
    workbook.type({ sheet: "Packing Crib", row: 10, column: 0 }, "☑");
    const again = await writePackingLists(workbook, await taken(workbook), defaultSettings);
    expect(again.ok && again.value.map(({ keptAs }) => keptAs !== null)).toEqual([
      true,
      false,
      false,
    ]);
  });

  test("write nothing where the workbook refuses", async () => {
    const workbook = crib();
    const takeOff = await taken(workbook);
    workbook.protectStructure();
    const written = await writePackingLists(workbook, takeOff, defaultSettings);
    expect(written).toMatchObject({ ok: false, error: { code: "workbook-protected" } });
    expect(workbook.snapshot().sheets.map(({ name }) => name)).toEqual(["Schedule"]);
  });
});

describe("the grid of labels in the settings", () => {
  test("is kept in the workbook", async () => {
    const workbook = crib();
    const labels = {
      ...plainLabelGrid,
      paper: "a4",
      columns: 3,
      rows: 10,
      gapAcross: 0.1,
    } as const;
    await writeSettings(workbook, { ...defaultSettings, labels });
    expect((await readSettings(workbook)).labels).toEqual(labels);
  });

  test("is the plain one where what is kept makes no labels", async () => {
    const workbook = crib();
    await workbook.writeSetting(
      "settings",
      JSON.stringify({ labels: { ...plainLabelGrid, columns: 99 }, unit: "mm" }),
    );
    expect(await readSettings(workbook)).toMatchObject({ labels: plainLabelGrid, unit: "mm" });
  });
});
