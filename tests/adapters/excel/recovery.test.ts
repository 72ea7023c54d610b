/** A writing that broke off: who finds it, when, and what a person typed in between. */
import { describe, expect, test } from "@jest/globals";
import { openExcelWorkbook } from "../../../src/adapters/excel/excelWorkbook";
import { drawing } from "../../workbook/drawings";
import { excelOver, excelRig, type ExcelRig } from "./excelRig";
import { lookAt } from "./rigBook";

const mark = { kind: "hardware", subject: "Job A" };
const first = drawing("Hardware", mark, [["Item"], ["HN 1/4"]]);
const second = drawing("Hardware", mark, [["Items"], ["HN 5/16"]]);
const minute = 60_000;

/** Excel died after the new contents went in and before that was noted. */
async function brokenOff(now: () => number): Promise<ExcelRig> {
  for (let action = 1; ; action++) {
    const rig = await excelRig({ sheets: [{ name: "Schedule" }] }, "1.15", { now });
    await rig.workbook.write([first]);
    rig.host.failWith({ action, onwards: true });
    await rig.workbook.write([second]);
    const ours = lookAt(rig.book).find(({ name }) => name === "Hardware");
    const isSwapping = rig.book.parts.some(({ xml }) => xml.includes("%22swapping%22"));
    if (ours?.cells["A1"] === "Items" && isSwapping) return rig;
  }
}

const reopen = (rig: ExcelRig, now: number): ReturnType<typeof openExcelWorkbook> => {
  excelOver(rig.book, "1.15");
  return openExcelWorkbook({ now: () => now });
};

describe("a writing that broke off", () => {
  test("shows none of its sheets aside, and the marks still hold", async () => {
    const rig = await brokenOff(() => 0);
    const again = await reopen(rig, minute / 2);
    expect((await again.sheets()).map(({ name, mark: its }) => [name, its])).toEqual([
      ["Schedule", null],
      ["Hardware", mark],
    ]);
  });

  test("is left alone while its writer may still be at it", async () => {
    const rig = await brokenOff(() => 0);
    const before = lookAt(rig.book);
    const again = await reopen(rig, minute / 2);
    expect(lookAt(rig.book)).toEqual(before);
    expect(await again.write([second])).toMatchObject({
      ok: false,
      error: { code: "host-refused", message: expect.stringContaining("another window") },
    });
    expect(lookAt(rig.book)).toEqual(before);
  });

  test("is undone by the next to open the workbook", async () => {
    const rig = await brokenOff(() => 0);
    await reopen(rig, 2 * minute);
    expect(lookAt(rig.book)).toEqual([
      { name: "Schedule", visible: true, cells: {} },
      { name: "Hardware", visible: true, cells: { A1: "Item", A2: "HN 1/4" } },
    ]);
    expect(rig.book.parts).toEqual([]);
  });

  test("is undone by its own writer at the next writing", async () => {
    const rig = await brokenOff(() => 0);
    rig.host.failWith({});
    expect(await rig.workbook.write([second])).toMatchObject({
      ok: true,
      value: [{ was: "replaced", keptAs: null }],
    });
    expect(lookAt(rig.book).map(({ name }) => name)).toEqual(["Schedule", "Hardware"]);
  });

  test("loses nothing that a person typed into it since", async () => {
    const rig = await brokenOff(() => 0);
    rig.host.person.type("Hardware", "B7", "typed in the meantime");
    await reopen(rig, 2 * minute);
    const seen = Object.fromEntries(lookAt(rig.book).map(({ name, cells }) => [name, cells]));
    expect(seen["Hardware"]).toEqual({ A1: "Item", A2: "HN 1/4" });
    expect(seen["Hardware (kept)"]).toMatchObject({ B7: "typed in the meantime" });
    expect(rig.book.names.filter(({ sheet }) => sheet !== null)).toEqual([]);
  });

  test("does not keep the workbook from being opened when it can't be undone yet", async () => {
    const rig = await brokenOff(() => 0);
    const host = excelOver(rig.book, "1.15");
    host.failWith({ request: 2, onwards: true });
    const again = await openExcelWorkbook({ now: () => 2 * minute });
    host.failWith({});
    expect(await again.write([second])).toMatchObject({ ok: true });
    expect(lookAt(rig.book).map(({ name }) => name)).toEqual(["Schedule", "Hardware"]);
  });
});

test("writings and settings wait for each other", async () => {
  const rig = await excelRig({ sheets: [{ name: "Schedule" }] });
  const outcomes = await Promise.all([
    rig.workbook.write([first]),
    rig.workbook.writeSetting("unit", "mm"),
    rig.workbook.write([second]),
    rig.workbook.writeSetting("currency", "USD"),
  ]);
  expect(outcomes.map(({ ok }) => ok)).toEqual([true, true, true, true]);
  expect(await rig.workbook.readSetting("unit")).toBe("mm");
  expect(await rig.workbook.readSetting("currency")).toBe("USD");
  expect(lookAt(rig.book)[1]?.cells).toEqual({ A1: "Items", A2: "HN 5/16" });
});
