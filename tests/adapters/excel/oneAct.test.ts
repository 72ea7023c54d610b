/**
 * Writing as one act, down to the single action: every action of every request is refused once, each
 * answer is lost once, and the host dies at each action. Compared is all that a person could miss.
 */
import { describe, expect, test } from "@jest/globals";
import { openExcelWorkbook } from "../../../src/adapters/excel/excelWorkbook";
import type { Drawing } from "../../../src/workbook/drawing";
import { dump } from "../../fakehost/dump";
import type { FakeBook } from "../../fakehost/book";
import type { FakeHost, Faults } from "../../fakehost/fakeHost";
import { drawing } from "../../workbook/drawings";
import type { RigSetup } from "../../workbook/rig";
import { excelOver, excelRig, excelRigOver, type ExcelRig } from "./excelRig";
import { lookAt } from "./rigBook";

/**
 * Before 1.13 a table of another size is made anew, and formulas that named it hold its cells from
 * then on, even if the writing is undone. So none names it there.
 */
const setup = (version: string): RigSetup => ({
  sheets: [
    {
      name: "Schedule",
      cells: {
        A1: "Mark",
        A2: "D1",
        B2: { formula: version === "1.9" ? "=2*3" : "=SUM(Lines[Quantity])", result: 0 },
        B3: { formula: "=Hardware!B3", result: 0 },
        B4: { formula: "=Reasons!A2", result: "" },
      },
    },
    { name: "Findings", cells: { A1: "my own findings" } },
    { name: "Secret", hidden: true, cells: { C3: 7 } },
  ],
});

const hardwareMark = { kind: "hardware", subject: "Job A" };
const reasonsMark = { kind: "reasons", subject: "Job A" };

const hardware = (rows: readonly (readonly [string, number])[]): Drawing =>
  drawing(
    "Hardware",
    hardwareMark,
    [
      [{ kind: "text", text: "Hardware of Job A", look: "title", span: 1 }],
      ["Item", "Quantity", "Cost", "Sum"],
      ...rows.map(([item, quantity], row) => [
        item,
        quantity,
        0.25,
        `=Lines[[#This Row],[Quantity]]*C${row + 3}`,
      ]),
      ["Total", `=SUM(Lines[Quantity])`, null, `=SUM(D3:D${rows.length + 2})`],
    ],
    {
      columnWidths: [20, 8, 8, 10],
      frozenRows: 2,
      tables: [
        { name: "Lines", headingRow: 1, lastRow: rows.length + 1, firstColumn: 0, lastColumn: 3 },
      ],
      print: {
        orientation: "landscape",
        titleRows: { first: 1, last: 1 },
        columns: { first: 0, last: 2 },
        fitToOnePageWide: true,
        breaksBefore: [],
        header: "Job A",
        footer: "{page} of {pages}",
      },
    },
  );

const reasons = (...texts: readonly string[]): Drawing =>
  drawing("Reasons", reasonsMark, [
    ["Because", "=Hardware!B2"],
    ...texts.map((text) => [text, `=Hardware!A1&"Hardware!A1"`]),
  ]);

const first = [
  hardware([
    ["HN 1/4", 19],
    ["CB 1/4 x 1/2", 2],
  ]),
  reasons("two a hanger"),
];

const next: readonly Drawing[] = [
  hardware([
    ["HN 1/4", 21],
    ["CB 1/4 x 1/2", 4],
    ["SPACER", 4],
  ]),
  reasons("three a hanger", "four a leaf"),
  drawing(
    "Findings",
    { kind: "findings", subject: "" },
    [
      ["Cell", "Level"],
      ["Schedule!D7", "=Hardware!B3"],
    ],
    {
      choices: [
        { column: 1, firstRow: 1, lastRow: 5, list: ["stop", "warn"], othersToo: false },
        { column: 0, firstRow: 1, lastRow: 5, list: ["a,b", "c"], othersToo: true },
      ],
      tables: [{ name: "Lines", headingRow: 0, lastRow: 1, firstColumn: 0, lastColumn: 1 }],
    },
  ),
  drawing("Items", null, [["Code"], ["HN 1/4"]]),
];

const versions = ["1.9", "1.15"];

const session = { writer: "0000000a" };
const readyBooks = new Map<string, FakeBook>();

/** A copy for each try of the workbook that `readyBook` makes once. */
async function ready(version: string): Promise<ExcelRig> {
  const known = readyBooks.get(version) ?? (await readyBook(version));
  readyBooks.set(version, known);
  const rig = await excelRigOver(structuredClone(known), version, session);
  rig.host.failWith({});
  return rig;
}

/** Ours written once; a person typed into one sheet, renamed the other and commented nowhere. */
async function readyBook(version: string): Promise<FakeBook> {
  const rig = await excelRig(setup(version), version, session);
  const outcome = await rig.workbook.write(first);
  if (!outcome.ok) throw new Error(outcome.error.message);
  await rig.workbook.writeSetting("unit", "mm");
  await rig.type("Reasons", "B3", "said the foreman");
  await rig.rename("Hardware", "For the yard");
  return rig.book;
}

type Measured = {
  readonly before: string;
  readonly after: string;
  readonly requests: number;
  /** The actions to try: each one from the swap on, every fifteenth while the new is prepared. */
  readonly actions: readonly number[];
};

async function measured(version: string): Promise<Measured> {
  const rig = await ready(version);
  const before = JSON.stringify(dump(rig.book));
  const outcome = await rig.workbook.write(next);
  expect(outcome).toMatchObject({ ok: true });
  return {
    before,
    after: JSON.stringify(dump(rig.book)),
    requests: rig.host.requests.length,
    actions: actionsToTry(rig.host.actions(), rig.host.requests),
  };
}

function actionsToTry(all: number, [look, prepare]: FakeHost["requests"]): readonly number[] {
  const isPreparing = (look?.actions ?? 0) + (prepare?.actions ?? 0);
  const actions = Array.from({ length: all }, (_, index) => index + 1);
  return actions.filter((action) => action > isPreparing - 20 || action % 15 === 0);
}

async function tried(version: string, faults: Faults): Promise<{ ok: boolean; found: string }> {
  const rig = await ready(version);
  rig.host.failWith(faults);
  const outcome = await rig.workbook.write(next);
  rig.host.failWith({});
  return { ok: outcome.ok, found: JSON.stringify(dump(rig.book)) };
}

test("the whole of it is as it should be", async () => {
  const rig = await ready("1.15");
  expect(await rig.workbook.write(next)).toEqual({
    ok: true,
    value: [
      { name: "For the yard", mark: hardwareMark, was: "replaced", keptAs: null },
      { name: "Reasons", mark: reasonsMark, was: "replaced", keptAs: "Reasons (kept)" },
      {
        name: "Findings (2)",
        mark: { kind: "findings", subject: "" },
        was: "new",
        keptAs: null,
      },
      { name: "Items", mark: null, was: "new", keptAs: null },
    ],
  });
  const seen = Object.fromEntries(lookAt(rig.book).map(({ name, cells }) => [name, cells]));
  expect(Object.keys(seen)).toEqual([
    "Schedule",
    "Findings",
    "Secret",
    "For the yard",
    "Reasons",
    "Reasons (kept)",
    "Findings (2)",
    "Items",
    "Cribsheet lists",
  ]);
  expect(seen["Schedule"]).toMatchObject({
    B2: { formula: "=SUM(Lines[Quantity])" },
    B3: { formula: "='For the yard'!B3" },
    B4: { formula: "=Reasons!A2" },
  });
  expect(seen["For the yard"]).toMatchObject({
    A5: "SPACER",
    D5: { formula: "=Lines[[#This Row],[Quantity]]*C5" },
    B6: { formula: "=SUM(Lines[Quantity])" },
  });
  expect(seen["Reasons"]).toMatchObject({
    B1: { formula: "='For the yard'!B2" },
    B3: { formula: `='For the yard'!A1&"Hardware!A1"` },
  });
  expect(seen["Reasons (kept)"]).toMatchObject({ A2: "two a hanger", B3: "said the foreman" });
  expect(seen["Findings (2)"]).toMatchObject({ B2: { formula: "='For the yard'!B3" } });
  expect(rig.book.tables.map(({ name, sheet }) => [name, sheet.name])).toEqual([
    ["Lines", "For the yard"],
    ["Lines_2", "Findings (2)"],
  ]);
  const summaries = await rig.workbook.sheets();
  expect(summaries.map(({ name, mark }) => [name, mark?.kind])).toEqual([
    ["Schedule", undefined],
    ["Findings", undefined],
    ["Secret", undefined],
    ["For the yard", "hardware"],
    ["Reasons", "reasons"],
    ["Reasons (kept)", undefined],
    ["Findings (2)", "findings"],
    ["Items", undefined],
  ]);
  expect(await rig.workbook.readSetting("unit")).toBe("mm");
  expect(rig.book.parts).toHaveLength(1);
});

describe.each(versions)("with ExcelApi %s", (version) => {
  test("each action is refused once: all of it stands or nothing does", async () => {
    const { before, after, actions } = await measured(version);
    expect(actions.length).toBeGreaterThan(150);
    for (const action of actions) {
      const { ok, found } = await tried(version, { action });
      expect([action, found === (ok ? after : before)]).toEqual([action, true]);
    }
  }, 300_000);

  test("each answer is lost once: all of it stands or nothing does", async () => {
    const { before, after, requests } = await measured(version);
    for (let request = 1; request <= requests; request++) {
      const { ok, found } = await tried(version, { lostAnswer: request });
      expect([request, found === (ok ? after : before)]).toEqual([request, true]);
    }
  }, 300_000);

  test("the host dies at each action: the next to open the workbook puts it right", async () => {
    const { before, after, actions } = await measured(version);
    const ends = new Set<string>();
    for (const action of actions) {
      const rig = await ready(version);
      rig.host.failWith({ action, onwards: true });
      await rig.workbook.write(next);
      // The workbook is opened again, later, by another add-in.
      const host = excelOver(rig.book, version);
      const again = await openExcelWorkbook({
        writer: "0000000b",
        now: () => Date.now() + 120_000,
      });
      expect(host.requests.length).toBeGreaterThan(0);
      // A sheet that is half exchanged looks like one that a person typed into, so it is kept too.
      rig.book.sheets = rig.book.sheets.filter(({ name }) => name !== "For the yard (kept)");
      const found = JSON.stringify(dump(rig.book));
      ends.add(found === after ? "after" : found === before ? "before" : "neither");
      expect([action, found === after || found === before]).toEqual([action, true]);
      await again.sheets();
    }
    expect(ends).toEqual(new Set(["before", "after"]));
  }, 300_000);
});
