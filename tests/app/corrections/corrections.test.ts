import { describe, expect, test } from "@jest/globals";
import { readRecord } from "../../../src/app/corrections/correctionRecord";
import { defaultSettings, type Settings } from "../../../src/app/settings";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../../../src/app/reading/workbookTakeOff";
import { writeTakeOff } from "../../../src/app/writing/writeSheets";
import { writeRowName } from "../../../src/core/corrections/rowName";
import { scheduleRows, snapshotOf } from "../typedWorkbook";
import { memoryDesk, type Desk } from "./desk";
import { sheetRows, typeInRow, type SheetRow } from "./hardwareSheets";

const nut = "Crib | HN 1/4 |";
const fresh = (): Desk =>
  memoryDesk(snapshotOf({ Schedule: scheduleRows("A-1 | 1 | hinged door | 3' | 7' | 8'") }));

async function takeOff(desk: Desk, settings: Settings = defaultSettings): Promise<WorkbookTakeOff> {
  const result = await takeOffWorkbook(desk.workbook, settings);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

async function write(desk: Desk, settings: Settings = defaultSettings) {
  const written = await writeTakeOff(desk.workbook, await takeOff(desk, settings), settings);
  if (!written.ok) throw new Error(written.error.message);
  return written.value;
}

function rowOf(desk: Desk, name: string): SheetRow {
  const row = sheetRows(desk).find((each) => writeRowName(each.name).trim() === name);
  if (row === undefined) throw new RangeError(`No such row: ${name}`);
  return row;
}

const lineOf = ({ estimate }: WorkbookTakeOff, item: string) =>
  estimate.jobs[0]?.material.lines.find(({ line }) => line.item === item);

describe("spares that are typed over", () => {
  test("are kept when the sheets are written again, until they are cleared", async () => {
    const desk = fresh();
    await write(desk);
    typeInRow(desk, rowOf(desk, nut), { spares: 33 });
    expect((await write(desk))[0]?.keptAs).toBeNull();
    expect(rowOf(desk, nut).cell("spares")).toBe(33);
    expect(lineOf(await takeOff(desk), "HN 1/4")).toMatchObject({ spares: 33 });
    typeInRow(desk, rowOf(desk, nut), { spares: null });
    expect(lineOf(await takeOff(desk), "HN 1/4")?.spares).toBeLessThan(33);
  });

  test("are not seen where only the items' rule changed", async () => {
    const desk = fresh();
    await write(desk);
    const result = await takeOffWorkbook(desk.workbook, defaultSettings, {
      items: [
        { code: { value: "HN 1/4", place: null }, sparesPercent: { value: 50, place: null } },
      ],
    });
    expect(result.ok && result.value.estimate.corrections.kept).toEqual([]);
  });
});

describe("a unit cost that is typed over", () => {
  test("keeps the old sheet beside the new one", async () => {
    const desk = fresh();
    const [sheet] = await write(desk);
    desk.type({ sheet: sheet?.name ?? "", row: rowOf(desk, nut).row, column: 12 }, 9.99);
    expect((await write(desk))[0]?.keptAs).not.toBeNull();
  });

  test("does not make an items table of the sheet that is kept", async () => {
    const desk = fresh();
    const [sheet] = await write(desk);
    desk.type({ sheet: sheet?.name ?? "", row: rowOf(desk, nut).row, column: 12 }, 9.99);
    await write(desk);
    expect((await takeOff(desk)).inputs.hasOwnItems).toBe(false);
  });
});

describe("corrections of one sheet for each job and of one for all", () => {
  test("go along when the person changes between them", async () => {
    const [headings = [], crib = []] = scheduleRows("A-1 | 1 | hinged door | 3' | 7' | 8'");
    const cage = ["Cage", ...crib.slice(1)];
    const desk = memoryDesk(snapshotOf({ Schedule: [headings, crib, cage] }));
    await write(desk);
    typeInRow(desk, rowOf(desk, nut), { correction: "+3", reason: "r1", by: "AB" });
    const together = { ...defaultSettings, sheetPerJob: false };
    await write(desk, together);
    const shown = sheetRows(desk).filter((row) => row.cell("reason") === "r1");
    expect(shown.map(({ sheet }) => sheet)).toEqual(["Hardware Crib", "Hardware"]);
    expect(lineOf(await takeOff(desk, together), "HN 1/4")?.line.change).toMatchObject({
      pieces: 3,
    });
  });
});

describe("a record that cannot be read", () => {
  test("is a finding, is kept, and what stands on the sheets is read", async () => {
    const desk = fresh();
    await write(desk);
    typeInRow(desk, rowOf(desk, nut), { correction: "+3", reason: "r1", by: "AB" });
    await desk.workbook.writeSetting("corrections", "{broken");
    const codes = (await takeOff(desk)).findings.map(({ code }) => code);
    expect(codes).toContain("corrections-damaged");
    await write(desk);
    expect(await desk.workbook.readSetting("corrections.damaged")).toBe("{broken");
    const { record, damaged } = await readRecord(desk.workbook);
    expect(damaged).toBeNull();
    expect(record.corrections.map(({ typed }) => typed.reason)).toEqual(["r1"]);
  });
});

describe("a sheet whose headings are gone", () => {
  test("is a finding, is kept, and the record puts back what was known", async () => {
    const desk = fresh();
    await write(desk);
    typeInRow(desk, rowOf(desk, nut), { correction: "+3", reason: "r1", by: "AB" });
    const [sheet] = await write(desk);
    for (let column = 0; column < 17; column += 1) {
      desk.type({ sheet: sheet?.name ?? "", row: 4, column }, null);
    }
    expect((await takeOff(desk)).findings.map(({ code }) => code)).toContain(
      "hardware-headings-gone",
    );
    expect((await write(desk))[0]?.keptAs).not.toBeNull();
    expect(rowOf(desk, nut).cell("reason")).toBe("r1");
  });
});

test("a finding about a correction names its cell on the sheet that is written", async () => {
  const desk = fresh();
  await write(desk);
  typeInRow(desk, rowOf(desk, nut), { correction: "some" });
  await write(desk);
  const findings = desk.sheets().find(({ name }) => name === "Findings")?.rows ?? [];
  const cells = findings.flatMap((cells) => cells.map((cell) => cell?.value));
  expect(cells).toContain(`'Hardware Crib'!E${rowOf(desk, nut).row + 1}`);
});
