/**
 * The contract of the port: one suite that every adapter passes.
 *
 * `describeWorkbook(name, makeRig)` runs it on the workbooks that `makeRig` sets up.
 */
import { afterEach, describe, expect, test } from "@jest/globals";
import type { CellValue } from "../../src/core/base/cell";
import type { Drawing } from "../../src/workbook/drawing";
import type { Workbook, WorkbookChange, WrittenSheet } from "../../src/workbook/workbook";
import { drawing } from "./drawings";
import { cellAt, type Rig, type RigCell, type RigSetup, type SeenSheet } from "./rig";

const hardwareMark = { kind: "hardware", subject: "Job A" };
const reasonsMark = { kind: "reasons", subject: "Job A" };
const findingsMark = { kind: "findings", subject: "" };

const hardware = drawing("Hardware", hardwareMark, [
  ["Item", "Quantity"],
  ["HN 1/4", 19],
  ["=SUM(B2:B2)", true],
]);
const reasons = drawing("Reasons", reasonsMark, [["Because"], ["two a hanger"]]);
const findings = drawing("Findings", findingsMark, [["Cell"], ["Schedule!D7"]]);

/** A workbook in which each way of writing happens at once: see the test that fails each call. */
const busy: RigSetup = {
  sheets: [
    {
      name: "Schedule",
      cells: { A1: "Mark", A2: "D1", B2: { formula: "=Hardware!B2", result: 0 } },
    },
    { name: "Findings", cells: { A1: "my own findings" } },
    { name: "Secret", hidden: true, cells: { C3: 7 } },
  ],
};

export function describeWorkbook(name: string, makeRig: (setup: RigSetup) => Promise<Rig>): void {
  const open: Rig[] = [];
  const rigOf = async (setup: RigSetup): Promise<Rig> => {
    const rig = await makeRig(setup);
    open.push(rig);
    return rig;
  };
  const rigWith = (cells: Record<string, RigCell>): Promise<Rig> =>
    rigOf({ sheets: [{ name: "Sheet one", cells }] });
  afterEach(async () => {
    for (const rig of open.splice(0)) await rig.close();
  });

  describe(`${name}: what is there`, () => {
    test("lists sheets in order, hidden ones too, with their tables", async () => {
      const { workbook } = await rigOf({
        sheets: [
          {
            name: "Door list",
            cells: { B2: "Mark", C2: "Width", B3: "D1", C3: 84 },
            tables: { Doors: "B2:C3" },
          },
          { name: "Secret", hidden: true },
        ],
      });
      expect(await workbook.sheets()).toEqual([
        { name: "Door list", visible: true, mark: null, tables: ["Doors"] },
        { name: "Secret", visible: false, mark: null, tables: [] },
      ]);
      expect(await workbook.activeSheet()).toBe("Door list");
    });

    const values: [what: string, typed: RigCell, read: CellValue][] = [
      ["text", "Mark", "Mark"],
      ["text like a formula", "=1+1", "=1+1"],
      ["text with a plus", "+x", "+x"],
      ["text with a minus", "-x", "-x"],
      ["text with an at sign", "@x", "@x"],
      ["text like a length", "7-0", "7-0"],
      ["text like a number", "007", "007"],
      ["text in other scripts", "Tür 扉 🚪", "Tür 扉 🚪"],
      ["text of two lines", "one\ntwo", "one\ntwo"],
      ["text with marks of XML", `<b> & "c" 'd'`, `<b> & "c" 'd'`],
      ["a number", 84.5, 84.5],
      ["a small number", 0.1, 0.1],
      ["a large number", 123456789012, 123456789012],
      ["yes", true, true],
      ["no", false, false],
      ["a date", { kind: "date", serial: 46210 }, { kind: "date", serial: 46210 }],
      ["a formula's number", { formula: "=6*7", result: 42 }, 42],
      ["a formula's text", { formula: '="a"&"b"', result: "ab" }, "ab"],
      ["a formula's yes", { formula: "=1<2", result: true }, true],
      [
        "a formula's error",
        { formula: "=1/0", result: { kind: "error", error: "#DIV/0!" } },
        { kind: "error", error: "#DIV/0!" },
      ],
    ];
    test("reads each cell as what it is", async () => {
      const cells = Object.fromEntries(values.map(([, typed], row) => [`B${row + 3}`, typed]));
      const { workbook } = await rigWith(cells);
      const cell = await reader(workbook, "Sheet one");
      expect(values.map(([what], row) => [what, cell(`B${row + 3}`)])).toEqual(
        values.map(([what, , read]) => [what, read]),
      );
    });

    test("reads gaps as blank cells and a blank sheet as no rows", async () => {
      const { workbook } = await rigOf({
        sheets: [{ name: "Gaps", cells: { B2: "a", D4: "b" } }, { name: "Blank" }],
      });
      const cell = await reader(workbook, "Gaps");
      expect(["B2", "C2", "D2", "B3", "C4", "D4", "E9"].map(cell)).toEqual([
        "a",
        null,
        null,
        null,
        null,
        "b",
        null,
      ]);
      const blank = await workbook.read({ kind: "sheet", sheet: "Blank" });
      expect(blank).toMatchObject({ ok: true, value: { sheet: "Blank", rows: [] } });
    });

    test("reads a table with its heading row and nothing around it", async () => {
      const { workbook } = await rigOf({
        sheets: [
          {
            name: "Doors",
            cells: { A1: "around", B2: "Mark", C2: "Width", B3: "D1", C3: 84, B5: "below" },
            tables: { DoorTable: "B2:C3" },
          },
        ],
      });
      expect(await workbook.read({ kind: "table", table: "DoorTable" })).toEqual({
        ok: true,
        value: {
          sheet: "Doors",
          row: 1,
          column: 1,
          rows: [
            ["Mark", "Width"],
            ["D1", 84],
          ],
        },
      });
    });

    test("says so when a sheet or a table is not there", async () => {
      const { workbook } = await rigWith({});
      const noSheet = await workbook.read({ kind: "sheet", sheet: "Gone" });
      const noTable = await workbook.read({ kind: "table", table: "Gone" });
      const nowhere = await workbook.goTo({ sheet: "Gone", row: 0, column: 0 });
      expect(noSheet).toMatchObject({ ok: false, error: { code: "sheet-gone" } });
      expect(noTable).toMatchObject({ ok: false, error: { code: "table-gone" } });
      expect(nowhere).toMatchObject({ ok: false, error: { code: "sheet-gone" } });
    });

    test("goes to a cell of another sheet", async () => {
      const { workbook } = await rigOf({ sheets: [{ name: "One" }, { name: "Two" }] });
      expect(await workbook.goTo({ sheet: "Two", row: 4, column: 2 })).toEqual({
        ok: true,
        value: null,
      });
      expect(await workbook.activeSheet()).toBe("Two");
    });
  });

  describe(`${name}: settings`, () => {
    test("are kept by key, long and odd ones too", async () => {
      const { workbook } = await rigWith({});
      const odd = `{"width":"7'-0\\"","sheet":"=A & <B>"}\n${"x".repeat(40_000)}`;
      expect(await workbook.readSetting("columns")).toBeNull();
      expect(await workbook.writeSetting("columns", odd)).toEqual({ ok: true, value: null });
      expect(await workbook.writeSetting("unit", "mm")).toEqual({ ok: true, value: null });
      expect(await workbook.writeSetting("unit", "in")).toEqual({ ok: true, value: null });
      expect(await workbook.readSetting("columns")).toBe(odd);
      expect(await workbook.readSetting("unit")).toBe("in");
      expect(await workbook.readSetting("else")).toBeNull();
    });

    test("are kept as long as three frozen counts of the largest size", async () => {
      const { workbook } = await rigWith({});
      const long = `["A-101",96,"7'-0"],`.repeat(50_000);
      const keys = ["issues.1", "issues.2", "issues.3"];
      for (const key of keys) {
        expect(await workbook.writeSetting(key, `${key}${long}`)).toEqual({
          ok: true,
          value: null,
        });
      }
      for (const key of keys) {
        expect((await workbook.readSetting(key)) === `${key}${long}`).toBe(true);
      }
    });

    test("show on no sheet and outlive our writing", async () => {
      const rig = await rigWith({ A1: "x" });
      const before = await rig.look();
      await rig.workbook.writeSetting("unit", "mm");
      expect(await rig.look()).toEqual(before);
      await written(rig, [hardware]);
      expect(await rig.workbook.readSetting("unit")).toBe("mm");
    });
  });

  describe(`${name}: writing`, () => {
    test("adds new sheets behind the others, all in one act", async () => {
      const rig = await rigWith({ A1: "x" });
      expect(await written(rig, [hardware, reasons])).toEqual([
        { name: "Hardware", mark: hardwareMark, was: "new", keptAs: null },
        { name: "Reasons", mark: reasonsMark, was: "new", keptAs: null },
      ]);
      expect(await rig.look()).toEqual([
        { name: "Sheet one", visible: true, cells: { A1: "x" } },
        {
          name: "Hardware",
          visible: true,
          cells: {
            A1: "Item",
            B1: "Quantity",
            A2: "HN 1/4",
            B2: 19,
            A3: { formula: "=SUM(B2:B2)" },
            B3: true,
          },
        },
        { name: "Reasons", visible: true, cells: { A1: "Because", A2: "two a hanger" } },
      ]);
      expect((await rig.workbook.sheets()).map(({ mark }) => mark)).toEqual([
        null,
        hardwareMark,
        reasonsMark,
      ]);
      expect(await rig.workbook.activeSheet()).toBe("Sheet one");
    });

    test("leaves text as text, whatever it starts with", async () => {
      const texts = ["=1+1", "+x", "-x", "@x", "'x", "7-0", "1/4", "007", "1E5", "TRUE", "#N/A"];
      const rig = await rigWith({});
      const rows = texts.map((text) => [{ kind: "text", text, look: "body" } as const]);
      await written(rig, [drawing("Texts", hardwareMark, rows)]);
      const cell = await reader(rig.workbook, "Texts");
      expect(texts.map((_, row) => cell(`A${row + 1}`))).toEqual(texts);
      const sheet = (await rig.look()).find((each) => each.name === "Texts");
      expect(Object.values(sheet?.cells ?? {})).toEqual(texts);
    });

    test("writes every kind of cell", async () => {
      const rig = await rigWith({});
      const rows = [
        [
          { kind: "number", number: 2.5, look: "body", format: "money" },
          { kind: "date", date: { kind: "date", serial: 46210 }, look: "body", format: "date" },
          { kind: "yesNo", yes: false, look: "input" },
          { kind: "blank", look: "heading" },
          { kind: "formula", formula: "=A1*2", result: 5, look: "total", format: "money" },
          null,
          { kind: "text", text: "wide", look: "title", span: 2, note: "see <here>" },
        ],
      ] as const;
      await written(rig, [drawing("Kinds", null, rows)]);
      const cell = await reader(rig.workbook, "Kinds");
      expect(["A1", "B1", "C1", "D1", "E1", "F1", "G1"].map(cell)).toEqual([
        2.5,
        { kind: "date", serial: 46210 },
        false,
        null,
        5,
        null,
        "wide",
      ]);
    });

    test("cuts and cleans a name that no sheet may have", async () => {
      const rig = await rigWith({});
      const long = drawing(`Hardware [A/B]: ${"x".repeat(40)}`, hardwareMark, [["x"]]);
      const [sheet] = await written(rig, [long]);
      expect(sheet?.name).toMatch(/^Hardware A B x+$/);
      expect(sheet?.name.length).toBeLessThanOrEqual(31);
      expect(await written(rig, [long])).toEqual([{ ...sheet, was: "replaced" }]);
    });

    test("knows a sheet again by odd words in its mark", async () => {
      const rig = await rigWith({});
      const mark = { kind: "hardware", subject: `Job "A" | <b> & 'c' ${"Tür ".repeat(80)}` };
      await written(rig, [drawing("Odd", mark, [["x"]])]);
      expect((await rig.workbook.sheets())[1]?.mark).toEqual(mark);
      expect(await written(rig, [drawing("Odd", mark, [["y"]])]).then(whatWas)).toEqual([
        "replaced",
      ]);
    });

    test("offers lists of any length to choose from, and shows no sheet for the long ones", async () => {
      const long = Array.from({ length: 60 }, (_, index) => `item, number ${index}`);
      const choice = { column: 0, firstRow: 1, lastRow: 9, othersToo: true };
      const withLists = drawing("Hardware", hardwareMark, [["Item"]], {
        choices: [
          { ...choice, list: ["yes", "no"] },
          { ...choice, column: 1, list: long },
        ],
      });
      const rig = await rigWith({});
      expect((await written(rig, [withLists])).map((sheet) => sheet.name)).toEqual(["Hardware"]);
      expect((await rig.workbook.sheets()).map((sheet) => sheet.name)).toEqual([
        "Sheet one",
        "Hardware",
      ]);
      const once = await rig.look();
      expect(once.filter(({ visible }) => visible)).toHaveLength(2);
      await written(rig, [withLists]);
      expect(await rig.look()).toEqual(once);
    });

    test("makes a table under a free name where the name is taken", async () => {
      const rig = await rigOf({
        sheets: [{ name: "Mine", cells: { A1: "a", A2: 1 }, tables: { Lines: "A1:A2" } }],
      });
      const table = { name: "Lines", headingRow: 0, lastRow: 1, firstColumn: 0, lastColumn: 1 };
      const withTable = drawing(
        "Hardware",
        hardwareMark,
        [
          ["Item", "Quantity"],
          ["x", 1],
        ],
        {
          tables: [table],
        },
      );
      await written(rig, [withTable]);
      const [mine, ours] = await rig.workbook.sheets();
      expect(mine?.tables).toEqual(["Lines"]);
      expect(ours?.tables).toHaveLength(1);
      expect(ours?.tables).not.toEqual(["Lines"]);
      await written(rig, [withTable]);
      expect((await rig.workbook.sheets()).map(({ tables }) => tables)).toEqual([
        mine?.tables,
        ours?.tables,
      ]);
    });
  });

  describe(`${name}: writing again`, () => {
    const shorter = drawing("Hardware", hardwareMark, [["Item"], ["HN 5/16"]]);

    test("replaces in place: same name, same position, nothing of the old left", async () => {
      const rig = await rigWith({});
      await written(rig, [hardware, reasons]);
      const [, , reasonsBefore] = await rig.look();
      expect(await written(rig, [shorter])).toEqual([
        { name: "Hardware", mark: hardwareMark, was: "replaced", keptAs: null },
      ]);
      const [, ours, theirs, ...more] = await rig.look();
      expect(ours).toEqual({
        name: "Hardware",
        visible: true,
        cells: { A1: "Item", A2: "HN 5/16" },
      });
      expect([theirs, more]).toEqual([reasonsBefore, []]);
    });

    test("keeps the name that a person gave to our sheet", async () => {
      const rig = await rigWith({});
      await written(rig, [hardware]);
      await rig.rename("Hardware", "For the yard");
      expect(await written(rig, [shorter])).toEqual([
        { name: "For the yard", mark: hardwareMark, was: "replaced", keptAs: null },
      ]);
    });

    test("keeps formulas elsewhere that point at ours, and all other sheets", async () => {
      const rig = await rigOf(busy);
      await written(rig, [hardware]);
      const before = await rig.look();
      await written(rig, [shorter]);
      const after = await rig.look();
      const without = (sheets: readonly SeenSheet[]): readonly SeenSheet[] =>
        sheets.filter((sheet) => sheet.name !== "Hardware");
      expect(without(after)).toEqual(without(before));
      expect(after[0]?.cells["B2"]).toEqual({ formula: "=Hardware!B2" });
    });

    test("never touches a sheet that only looks like ours", async () => {
      const rig = await rigOf({ sheets: [{ name: "hardware", cells: { A1: "mine" } }] });
      const mine = (await rig.look())[0];
      expect((await written(rig, [hardware])).map((sheet) => sheet.name)).toEqual(["Hardware (2)"]);
      expect((await written(rig, [shorter])).map((sheet) => sheet.name)).toEqual(["Hardware (2)"]);
      expect((await rig.look())[0]).toEqual(mine);
      expect(await rig.look()).toHaveLength(2);
    });

    test("never replaces a sheet that was given to the person", async () => {
      const rig = await rigWith({});
      const given = drawing("Items", null, [["Code"], ["HN 1/4"]]);
      await written(rig, [given]);
      expect((await written(rig, [given])).map((sheet) => [sheet.name, sheet.was])).toEqual([
        ["Items (2)", "new"],
      ]);
    });

    const edits: [what: string, cell: string, typed: RigCell | null][] = [
      ["over a value", "B2", 20],
      ["over a formula", "A3", 19],
      ["beside the count", "D2", "ask the yard"],
      ["below it", "A9", "checked by hand"],
      ["a formula", "C2", { formula: "=B2*2", result: 38 }],
      ["text over a number that looks alike", "B2", "19"],
      ["a line away", "A2", null],
    ];
    test.each(edits)("keeps our sheet whole when a person typed %s", async (_, cell, typed) => {
      const rig = await rigWith({});
      await written(rig, [hardware, reasons]);
      await rig.type("Hardware", cell, typed);
      const [, touched] = await rig.look();
      const [sheet] = await written(rig, [shorter]);
      expect(sheet).toMatchObject({ name: "Hardware", was: "replaced" });
      const kept = sheet?.keptAs ?? "";
      const after = await rig.look();
      expect(after.map((each) => each.name)).toEqual(["Sheet one", "Hardware", kept, "Reasons"]);
      expect(after[2]).toEqual({ ...touched, name: kept });
      expect(after[1]?.cells).toEqual({ A1: "Item", A2: "HN 5/16" });
      const marks = (await rig.workbook.sheets()).map(({ mark }) => mark);
      expect(marks).toEqual([null, hardwareMark, null, reasonsMark]);
      expect(await written(rig, [hardware])).toEqual([{ ...sheet, keptAs: null }]);
      expect((await rig.look())[2]).toEqual(after[2]);
    });

    test("keeps formulas elsewhere on ours when the old one is set aside", async () => {
      const rig = await rigOf(busy);
      await written(rig, [hardware]);
      await rig.type("Hardware", "B2", 20);
      const [sheet] = await written(rig, [shorter]);
      expect(sheet?.keptAs).not.toBeNull();
      expect((await rig.look())[0]?.cells["B2"]).toEqual({ formula: "=Hardware!B2" });
    });

    test("keeps no copy when a person typed elsewhere only", async () => {
      const rig = await rigWith({});
      await written(rig, [hardware, reasons]);
      await rig.type("Sheet one", "A1", 5);
      await rig.type("Reasons", "A2", "because I say so");
      expect((await written(rig, [hardware]))[0]?.keptAs).toBeNull();
    });
  });

  describe(`${name}: cells to type into`, () => {
    const input = { kind: "blank", look: "input", input: true } as const;
    const worked = { ...input, kind: "formula", formula: "=B2+0", result: 19 } as const;
    const asking = drawing("Hardware", hardwareMark, [
      ["Item", "Quantity", "Correction", "Spares"],
      ["HN 1/4", 19, input, worked],
    ]);
    const next = (value: CellValue, spares: CellValue = 0): Drawing => ({
      ...asking,
      carried: [
        { row: 1, column: 2, value },
        { row: 1, column: 3, value: spares },
      ],
    });
    const asked = async (typed: readonly (readonly [cell: string, typed: RigCell])[]) => {
      const rig = await rigWith({});
      await written(rig, [asking]);
      for (const [cell, value] of typed) await rig.type("Hardware", cell, value);
      const read = await reader(rig.workbook, "Hardware");
      return { rig, shown: read("D2") };
    };

    test("no copy is kept where what was typed is carried on", async () => {
      const { rig, shown } = await asked([["C2", "+3"]]);
      expect((await written(rig, [next("+3", shown)]))[0]?.keptAs).toBeNull();
    });

    test("no copy is kept where a formula of ours was typed over and is carried on", async () => {
      const { rig } = await asked([["D2", 7]]);
      expect((await written(rig, [next(null, 7)]))[0]?.keptAs).toBeNull();
    });

    test("no copy is kept where nothing was typed and nothing is carried on", async () => {
      const { rig } = await asked([]);
      expect((await written(rig, [asking]))[0]?.keptAs).toBeNull();
    });

    test.each<readonly [string, Drawing, readonly (readonly [string, RigCell])[]]>([
      ["nothing is carried on", asking, [["C2", "+3"]]],
      ["something else is carried on", next("+3"), [["C2", "+4"]]],
      [
        "it is typed elsewhere too",
        next("+3"),
        [
          ["C2", "+3"],
          ["B2", 20],
        ],
      ],
    ])("a copy is kept where %s", async (_, drawn, typed) => {
      const { rig } = await asked(typed);
      const [sheet] = await written(rig, [drawn]);
      const kept = (await rig.look()).find((each) => each.name === sheet?.keptAs);
      expect(kept?.cells["C2"]).toBe(typed[0]?.[1]);
    });

    test("a copy is kept where a cell was cleared since it was read", async () => {
      const { rig } = await asked([["C2", "+3"]]);
      await rig.type("Hardware", "C2", null);
      expect((await written(rig, [next("+3")]))[0]?.keptAs).not.toBeNull();
    });
  });

  describe(`${name}: refusing`, () => {
    test("a sheet of ours that a person protected", async () => {
      const rig = await rigWith({});
      await written(rig, [hardware]);
      await rig.protect("Hardware");
      const before = await rig.look();
      expect(await rig.workbook.write([reasons, hardware])).toMatchObject({
        ok: false,
        error: { code: "sheet-protected" },
      });
      expect(await rig.look()).toEqual(before);
    });

    test("a new sheet where the workbook's structure is protected", async () => {
      const rig = await rigWith({});
      await rig.protectStructure();
      const before = await rig.look();
      const refused = await rig.workbook.write([hardware]);
      expect(refused).toMatchObject({ ok: false, error: { code: "workbook-protected" } });
      expect(refused.ok ? "" : refused.error.message).toMatch(/Nothing was changed.*Take .* off/);
      expect(await rig.look()).toEqual(before);
    });

    test("a sheet of ours there, unless it can be replaced where it is", async () => {
      const rig = await rigWith({});
      await written(rig, [hardware]);
      await rig.protectStructure();
      const before = await rig.look();
      const again = await rig.workbook.write([
        drawing(hardware.name, hardware.mark, [["Written again"]]),
      ]);
      const after = await rig.look();
      if (!rig.replacesInProtected) {
        expect(again).toMatchObject({ ok: false, error: { code: "workbook-protected" } });
        expect(after).toEqual(before);
        return;
      }
      expect(again).toMatchObject({ ok: true });
      expect(after.map(({ name }) => name)).toEqual(before.map(({ name }) => name));
      expect(after.find(({ name }) => name === "Hardware")?.cells).toEqual({ A1: "Written again" });
    });

    test("to go on once it is cancelled", async () => {
      const rig = await rigWith({ A1: "x" });
      const before = await rig.look();
      const early = new AbortController();
      early.abort();
      const late = new AbortController();
      const onProgress = (done: number): void => {
        if (done < 1) late.abort();
      };
      for (const options of [{ signal: early.signal }, { signal: late.signal, onProgress }]) {
        expect(await rig.workbook.write([hardware, reasons], options)).toMatchObject({
          ok: false,
          error: { code: "cancelled" },
        });
        expect(await rig.look()).toEqual(before);
      }
    });

    test("tells its progress, never backwards, to the end", async () => {
      const rig = await rigWith({});
      const told: number[] = [];
      await rig.workbook.write([hardware, reasons], { onProgress: (done) => told.push(done) });
      expect(told.at(-1)).toBe(1);
      expect(told.length).toBeGreaterThan(1);
      expect(told).toEqual([...told].sort((one, other) => one - other));
      expect(told[0]).toBeGreaterThanOrEqual(0);
    });
  });

  describe(`${name}: watching`, () => {
    test("hears our own writing and what a person types, until it stops", async () => {
      const rig = await rigWith({ A1: 1 });
      const heard: WorkbookChange[] = [];
      const stop = await rig.workbook.watch((change) => heard.push(change));
      await written(rig, [hardware]);
      await settled();
      expect(heard).toContainEqual({ kind: "sheets" });
      if (rig.hearsTyping) {
        heard.length = 0;
        await rig.type("Sheet one", "A1", 2);
        await settled();
        expect(heard).toContainEqual({ kind: "cells", sheet: "Sheet one" });
      }
      await stop();
      heard.length = 0;
      await rig.type("Sheet one", "A1", 3);
      await written(rig, [reasons]);
      await settled();
      expect(heard).toEqual([]);
    });
  });

  describe(`${name}: one act`, () => {
    /** One sheet is replaced, one kept because a person typed into it, one is new beside a look-alike. */
    const ready = async (): Promise<Rig> => {
      const rig = await rigOf(busy);
      await written(rig, [hardware, reasons]);
      await rig.type("Reasons", "B2", "said the foreman");
      return rig;
    };
    const next: readonly Drawing[] = [
      drawing("Hardware", hardwareMark, [["Item"], ["HN 5/16"]]),
      drawing("Reasons", reasonsMark, [["Because"], ["three a hanger"]]),
      findings,
    ];

    test("stands whole or not at all, whichever call the host refuses", async () => {
      const rig = await ready();
      const before = await rig.look();
      rig.failAt(null);
      await written(rig, next);
      const calls = rig.calls();
      const after = await rig.look();
      expect(calls).toBeGreaterThan(0);
      expect(after.map((sheet) => sheet.name)).toEqual([
        "Schedule",
        "Findings",
        "Secret",
        "Hardware",
        "Reasons",
        "Reasons (kept)",
        "Findings (2)",
      ]);
      for (let call = 1; call <= calls; call++) {
        const tried = await ready();
        tried.failAt(call);
        const outcome = await tried.workbook.write(next);
        tried.failAt(null);
        const found = await tried.look();
        const stands = outcome.ok || JSON.stringify(found) === JSON.stringify(after);
        expect([call, found]).toEqual([call, stands ? after : before]);
        await closeAll();
      }
    }, 300_000);

    test("loses nothing that a person typed, should the host refuse all further calls", async () => {
      const counted = await ready();
      counted.failAt(null);
      await written(counted, next);
      const calls = counted.calls();
      for (let call = 1; call <= calls; call++) {
        const rig = await ready();
        rig.failAt(call, true);
        await rig.workbook.write(next);
        rig.failAt(null);
        const found = JSON.stringify(await rig.look());
        for (const typed of ["my own findings", "said the foreman", "=Hardware!B2", '"C3":7']) {
          expect([call, typed, found.includes(typed)]).toEqual([call, typed, true]);
        }
        await closeAll();
      }
    }, 300_000);

    const closeAll = async (): Promise<void> => {
      for (const rig of open.splice(0)) await rig.close();
    };
  });
}

/** Writes and returns what was written; a refusal fails the test with its message. */
async function written(rig: Rig, drawings: readonly Drawing[]): Promise<readonly WrittenSheet[]> {
  const outcome = await rig.workbook.write(drawings);
  if (!outcome.ok) throw new Error(`${outcome.error.code}: ${outcome.error.message}`);
  return outcome.value;
}

const whatWas = (sheets: readonly WrittenSheet[]): string[] => sheets.map(({ was }) => was);

/** Reads a sheet through the port; what it returns tells each cell's value by the cell's name. */
async function reader(workbook: Workbook, sheet: string): Promise<(cell: string) => CellValue> {
  const read = await workbook.read({ kind: "sheet", sheet });
  if (!read.ok) throw new Error(read.error.message);
  const { row: top, column: left, rows } = read.value;
  return (cell) => {
    const { row, column } = cellAt(cell);
    return rows[row - top]?.[column - left] ?? null;
  };
}

/** Hosts tell of changes a moment later. */
const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 60));
