import { afterEach, describe, expect, test } from "@jest/globals";
import { associateCommands, commandsToCome } from "../../../src/main/excel/ribbon";
import { excelRig, type ExcelRig } from "../../adapters/excel/excelRig";
import { lookAt } from "../../adapters/excel/rigBook";
import type { RigSheet } from "../../workbook/rig";
import { goodRow, scheduleSheet } from "./schedules";

type Pressed = {
  readonly rig: ExcelRig;
  readonly said: string[];
  readonly shown: () => number;
  /** Presses the ribbon's button and waits until Excel is told that it is done. */
  readonly press: () => Promise<void>;
};

async function ribbonOver(sheets: readonly RigSheet[]): Promise<Pressed> {
  const rig = await excelRig({ sheets });
  let command: (event: { completed: () => void }) => void = () => undefined;
  let shown = 0;
  Object.assign(Office, {
    actions: {
      associate: (id: string, act: typeof command) => {
        if (id === "takeOffActiveSheet") command = act;
      },
    },
    addin: {
      showAsTaskpane: () => {
        shown++;
        return Promise.resolve();
      },
    },
  });
  const said: string[] = [];
  associateCommands(Promise.resolve(rig.workbook), (text) => said.push(text));
  return {
    rig,
    said,
    shown: () => shown,
    press: () => new Promise((completed) => command({ completed })),
  };
}

afterEach(() => {
  Reflect.deleteProperty(globalThis, "Office");
});

const names = ({ book }: ExcelRig): string[] => lookAt(book).map(({ name }) => name);

describe("taking off the active sheet", () => {
  test("writes its sheets and goes to the first, without the pane", async () => {
    const { rig, said, shown, press } = await ribbonOver([
      scheduleSheet("North", [goodRow("Job North", "N1")]),
      scheduleSheet("South", [goodRow("Job South", "S1")]),
    ]);
    rig.host.person.select("South", "A1");
    await press();
    expect(names(rig).some((name) => name.includes("South") && name !== "South")).toBe(true);
    expect(names(rig).some((name) => name.includes("Job North"))).toBe(false);
    expect(said).toEqual([expect.stringMatching(/^Wrote “/)]);
    expect(shown()).toBe(0);
    expect(await rig.workbook.activeSheet()).toBe(names(rig)[2]);
  });

  test("again from a sheet of ours takes the schedule off again", async () => {
    const { rig, said, press } = await ribbonOver([
      scheduleSheet("North", [goodRow("Job North", "N1")]),
    ]);
    await press();
    const before = names(rig);
    await press();
    expect(names(rig)).toEqual(before);
    expect(said[1]).toBe(said[0]);
  });

  test("shows the pane where a row could not be counted", async () => {
    const { said, shown, press } = await ribbonOver([
      scheduleSheet("North", [
        goodRow("Job North", "N1"),
        ["Job North", "N2", "sliding door", 1, "wide"],
      ]),
    ]);
    await press();
    expect(said[0]).toMatch(/Not everything could be counted/);
    expect(shown()).toBe(1);
  });

  test("writes nothing from a sheet without openings, and says so", async () => {
    const { rig, said, shown, press } = await ribbonOver([
      { name: "Letters", cells: { A1: "Dear all" } },
      scheduleSheet("North", [goodRow("Job North", "N1")]),
    ]);
    await press();
    expect(names(rig)).toEqual(["Letters", "North"]);
    expect(said[0]).toMatch(/“Letters” holds no openings/);
    expect(shown()).toBe(1);
  });

  test("tells Excel that it is done, whatever Excel refuses", async () => {
    const { rig, said, shown, press } = await ribbonOver([
      scheduleSheet("North", [goodRow("Job North", "N1")]),
    ]);
    for (const request of [1, 2, 4, 6, 8]) {
      rig.host.failWith({ request, onwards: true });
      await press();
    }
    expect(said).toHaveLength(5);
    expect(shown()).toBe(5);
  });
});

test("a button that started the add-in is answered once there is a workbook", async () => {
  const { rig, press } = await ribbonOver([scheduleSheet("North", [goodRow("Job North", "N1")])]);
  const said: string[] = [];
  const commands = commandsToCome();
  commands.associate();
  const pressed = press();
  expect(said).toEqual([]);
  commands.connect({ workbook: Promise.resolve(rig.workbook), say: (text) => said.push(text) });
  await pressed;
  expect(said).toEqual([expect.stringMatching(/^Wrote “/)]);
});
