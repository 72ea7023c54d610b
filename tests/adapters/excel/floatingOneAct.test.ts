/**
 * Writing as one act where pictures and charts belong to it: each action is refused once, each answer
 * is lost once, and the host dies at each action.
 */
import { describe, expect, test } from "@jest/globals";
import { openExcelWorkbook } from "../../../src/adapters/excel/excelWorkbook";
import type { Drawing } from "../../../src/workbook/drawing";
import { dump } from "../../fakehost/dump";
import type { FakeBook } from "../../fakehost/book";
import type { FakeHost, Faults } from "../../fakehost/fakeHost";
import { excelOver, excelRig, excelRigOver, type ExcelRig } from "./excelRig";
import { margins, packing, painter, picture, sheetNamed } from "./floatingDrawings";

const first = [packing("First"), margins({ North: 0.25 })];
const next: readonly Drawing[] = [
  packing("Second", [
    { ...picture, width: 120 },
    { ...picture, row: 3, marks: [...picture.marks] },
  ]),
  margins({ North: 0.2, South: 0.1 }),
  { ...packing("New"), name: "Other", mark: { kind: "packing", subject: "Job B" } },
];

/** Both written once. A person put a photo and a chart on ours, and typed into the margins. */
async function written(version: string): Promise<FakeBook> {
  const rig = await excelRig({ sheets: [{ name: "Schedule" }] }, version, {
    writer: "0000000a",
    paint: painter().paint,
  });
  const outcome = await rig.workbook.write(first);
  if (!outcome.ok) throw new Error(outcome.error.message);
  sheetNamed(rig, "Packing").shapes.push({ id: "{X}", name: "Photo", image: "abcd", looks: {} });
  sheetNamed(rig, "Margins").charts.push({ id: "{Y}", name: "Mine", looks: {}, series: [] });
  await rig.type("Margins", "D2", "ask the owner");
  return rig.book;
}

const books = new Map<string, Promise<FakeBook>>();

/** A workbook in which they are written, open and untouched since. */
async function ready(version: string): Promise<ExcelRig> {
  const book = books.get(version) ?? written(version);
  books.set(version, book);
  return excelRigOver(structuredClone(await book), version, {
    writer: "0000000a",
    paint: painter().paint,
  });
}

const seenIn = (rig: ExcelRig): string => JSON.stringify(dump(rig.book));

type Ends = { readonly before: string; readonly allowed: readonly string[] };

/** How the workbook may be afterwards: with all of it, or with words or no charts in place of them. */
async function endsOf(
  version: string,
): Promise<Ends & { readonly actions: readonly number[]; readonly requests: number }> {
  const rig = await ready(version);
  const before = seenIn(rig);
  expect(await rig.workbook.write(next)).toMatchObject({ ok: true });
  const { requests } = rig.host;
  const counted = {
    actions: actionsToTry(rig.host.actions(), requests),
    requests: requests.length,
  };
  const worded = await ready(version);
  worded.book.takesImages = false;
  await worded.workbook.write(next);
  return { before, allowed: [seenIn(rig), seenIn(worded)], ...counted };
}

/** Each one from the pictures on, every twentieth while cells are prepared: others try those. */
function actionsToTry(all: number, [look, prepare]: FakeHost["requests"]): readonly number[] {
  const isPreparing = (look?.actions ?? 0) + (prepare?.actions ?? 0);
  const actions = Array.from({ length: all }, (_, index) => index + 1);
  return actions.filter((action) => action > isPreparing || action % 20 === 0);
}

async function tried(version: string, faults: Faults): Promise<{ ok: boolean; found: string }> {
  const rig = await ready(version);
  rig.host.failWith(faults);
  const outcome = await rig.workbook.write(next);
  rig.host.failWith({});
  return { ok: outcome.ok, found: seenIn(rig) };
}

describe.each(["1.9", "1.15"])("with ExcelApi %s", (version) => {
  test("each action is refused once: all of it stands, with pictures or words, or nothing does", async () => {
    const { before, allowed, actions } = await endsOf(version);
    const ends = new Set<number>();
    for (const action of actions) {
      const { ok, found } = await tried(version, { action });
      const end = ok ? allowed.indexOf(found) : found === before ? 2 : -1;
      ends.add(end);
      expect([action, ok, end >= 0]).toEqual([action, ok, true]);
    }
    expect(ends).toEqual(new Set([0, 1, 2]));
  }, 300_000);
});

describe("with ExcelApi 1.15", () => {
  const version = "1.15";

  test("each answer is lost once: all of it stands, with pictures or words, or nothing does", async () => {
    const { before, allowed, requests } = await endsOf(version);
    for (let request = 1; request <= requests; request++) {
      const { ok, found } = await tried(version, { lostAnswer: request });
      const stands = ok ? allowed.includes(found) : found === before;
      expect([request, ok, stands]).toEqual([request, ok, true]);
    }
  }, 300_000);

  test("the host dies at each action: the next to open the workbook puts it right", async () => {
    const { before, allowed, actions } = await endsOf(version);
    const ends = new Set<number>();
    for (const action of actions) {
      const rig = await ready(version);
      rig.host.failWith({ action, onwards: true });
      await rig.workbook.write(next);
      excelOver(rig.book, version);
      await openExcelWorkbook({ writer: "0000000b", now: () => Date.now() + 120_000 });
      // What was half exchanged looks as if a person had typed into it, so it is kept too.
      rig.book.sheets = rig.book.sheets.filter(({ name }) => name !== "Packing (kept)");
      for (const sheet of rig.book.sheets) {
        // Dead between an image or a chart and its name: an hour later nobody knows whose it is.
        sheet.shapes = sheet.shapes.filter(({ name }) => !/^Picture \d+$/.test(name));
        sheet.charts = sheet.charts.filter(({ name }) => !/^Chart \d+$/.test(name));
      }
      const found = seenIn(rig);
      const end = [before, ...allowed].indexOf(found);
      ends.add(end);
      expect([action, end >= 0]).toEqual([action, true]);
    }
    expect(ends).toEqual(new Set([0, 1]));
  }, 300_000);
});
