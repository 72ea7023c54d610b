/** What Excel refuses, in plain words and with a way on; and what the adapter does about silence. */
import { describe, expect, test } from "@jest/globals";
import { faultOf } from "../../../src/adapters/excel/excelFaults";
import type { WorkbookFault } from "../../../src/workbook/workbook";
import { drawing } from "../../workbook/drawings";
import { excelRig } from "./excelRig";

const sheet = { kind: "sheet", sheet: "Schedule" } as const;
const hardware = drawing("Hardware", { kind: "hardware", subject: "" }, [["Item"]]);
const open = (options: Parameters<typeof excelRig>[2] = {}): ReturnType<typeof excelRig> =>
  excelRig({ sheets: [{ name: "Schedule", cells: { A1: "Mark" } }] }, "1.9", options);

describe("each refusal has its own words", () => {
  const cases: [code: string, fault: WorkbookFault["code"], words: RegExp][] = [
    ["AccessDenied", "sheet-protected", /protected/],
    ["InvalidOperationInCellEditMode", "cell-being-edited", /Enter or Esc/],
    ["RequestPayloadSizeLimitExceeded", "too-large", /fewer jobs/],
    ["RequestAborted", "workbook-closed", /Open it again/],
    ["InactiveWorkbook", "host-refused", /another workbook.* in front/],
    ["InvalidSelection", "host-refused", /Click on a cell of this workbook/],
    ["UnsupportedSheet", "host-refused", /Go to a sheet with cells/],
    ["FilteredRangeConflict", "host-refused", /Clear the filters/],
    ["MemoryLimitReached", "too-large", /fewer jobs/],
    ["ItemNotFound", "sheet-gone", /no longer there/],
    ["GeneralException", "host-refused", /try again/i],
    // No code is known for an undo stack that is full: what empties it is said with every other refusal.
    ["UnknownToUs", "host-refused", /save the workbook, close it and open it again/],
  ];
  test.each(cases)("%s", async (code, fault, words) => {
    const rig = await open();
    rig.host.failWith({ request: 1, onwards: true, code });
    for (const outcome of [await rig.workbook.read(sheet), await rig.workbook.write([hardware])]) {
      expect(outcome).toMatchObject({ ok: false, error: { code: fault } });
      expect(outcome.ok ? "" : outcome.error.message).toMatch(words);
    }
  });

  test("no message names a code of Excel's or of ours", async () => {
    const rig = await open();
    for (const [code] of cases) {
      rig.host.failWith({ request: 1, onwards: true, code });
      const outcome = await rig.workbook.read(sheet);
      expect(outcome.ok ? "" : outcome.error.message).not.toMatch(/[a-z][A-Z]|[a-z]-[a-z]+-/);
    }
  });

  test("questions without room for a fault reject with the same words", async () => {
    const rig = await open();
    rig.host.close();
    await expect(rig.workbook.sheets()).rejects.toThrow(/Open it again/);
    await expect(rig.workbook.readSetting("unit")).rejects.toThrow(/Open it again/);
  });

  test("a mistake in the program is no fault of the workbook's", () => {
    expect(() => faultOf(new TypeError("x is not a function"))).toThrow(TypeError);
    const notLoaded = { code: "PropertyNotLoaded", message: "load it first", debugInfo: {} };
    expect(() => faultOf(notLoaded)).toThrow(expect.objectContaining(notLoaded));
  });
});

test("a cell far from all others is named, and not read for", async () => {
  const rig = await open();
  await rig.type("Schedule", "XFD1048576", "stray");
  rig.host.failWith({});
  const outcome = await rig.workbook.read(sheet);
  expect(outcome).toMatchObject({ ok: false, error: { code: "too-large" } });
  expect(outcome.ok ? "" : outcome.error.message).toMatch(/“Schedule”.*XFD1048576/);
  expect(rig.host.requests).toHaveLength(1);
});

test("a person who looks at another workbook for a while does not spoil a writing", async () => {
  const written = async (from: number | null) => {
    const rig = await open({ patience: 20 });
    await rig.workbook.write([hardware]);
    await rig.type("Hardware", "B2", "mine");
    const before = await rig.look();
    rig.host.failWith({
      ...(from === null ? {} : { request: from, onwards: true, code: "InactiveWorkbook" }),
      meanwhile: { request: (from ?? 100) + 8, happens: () => rig.host.failWith({}) },
    });
    const outcome = await rig.workbook.write([drawing("Hardware", hardware.mark, [["So"]])]);
    return { outcome, before, after: await rig.look(), requests: rig.host.requests.length };
  };
  const undisturbed = await written(null);
  expect(undisturbed.outcome.ok).toBe(true);
  for (let from = 1; from <= undisturbed.requests; from++) {
    const { outcome, before, after } = await written(from);
    if (outcome.ok) expect(after).toEqual(undisturbed.after);
    else {
      expect(outcome.error.message).toMatch(/another workbook/);
      expect(after).toEqual(before);
    }
  }
});

describe("protection", () => {
  test("a protected structure takes no writing, not even in place", async () => {
    const rig = await open();
    await rig.workbook.write([hardware]);
    rig.book.structureProtected = true;
    const before = await rig.look();
    expect(await rig.workbook.write([hardware])).toMatchObject({
      error: { code: "workbook-protected" },
    });
    expect(await rig.look()).toEqual(before);
  });

  test("a sheet that is protected between looking and swapping leaves all as it was", async () => {
    const rig = await open();
    const reasons = drawing("Reasons", { kind: "reasons", subject: "" }, [["Because"]]);
    await rig.workbook.write([reasons, hardware]);
    const before = await rig.look();
    rig.host.failWith({
      meanwhile: { request: 3, happens: () => void rig.protect("Hardware") },
    });
    const changed = [
      drawing("Reasons", { kind: "reasons", subject: "" }, [["So"]]),
      drawing("Hardware", { kind: "hardware", subject: "" }, [["Items"]]),
    ];
    expect(await rig.workbook.write(changed)).toMatchObject({
      ok: false,
      error: { code: "sheet-protected" },
    });
    expect(await rig.look()).toEqual(before);
  });
});

describe("a cell that is being edited", () => {
  test("is waited for", async () => {
    const rig = await open();
    rig.host.beginEdit();
    const reading = rig.workbook.read(sheet);
    setTimeout(rig.host.endEdit, 20);
    expect(await reading).toMatchObject({ ok: true });
  });

  test("is not waited for without end, and nothing is written later", async () => {
    const rig = await open({ patience: 20 });
    const before = await rig.look();
    rig.host.beginEdit();
    for (const outcome of [
      await rig.workbook.read(sheet),
      await rig.workbook.goTo({ sheet: "Schedule", row: 0, column: 0 }),
      await rig.workbook.write([hardware]),
    ]) {
      expect(outcome).toMatchObject({ ok: false, error: { code: "cell-being-edited" } });
    }
    rig.host.endEdit();
    await new Promise((done) => setTimeout(done, 10));
    expect(await rig.look()).toEqual(before);
  });
});

test("a printer that is missing does not keep the sheets from being written", async () => {
  const rig = await open();
  rig.book.hasPrinter = false;
  expect(await rig.workbook.write([hardware])).toMatchObject({ ok: true });
  expect((await rig.look()).map(({ name }) => name)).toEqual(["Schedule", "Hardware"]);
  expect(rig.book.parts).toEqual([]);
});

test("going to a hidden sheet says how to unhide it", async () => {
  const rig = await excelRig({ sheets: [{ name: "One" }, { name: "Two", hidden: true }] });
  expect(await rig.workbook.goTo({ sheet: "Two", row: 0, column: 0 })).toMatchObject({
    ok: false,
    error: { code: "host-refused", message: expect.stringContaining("Unhide") },
  });
});
