/** How often Excel is asked: by megabytes, never by rows or sheets. */
import { describe, expect, test } from "@jest/globals";
import type { Drawing } from "../../../src/workbook/drawing";
import { payloadLimit } from "../../fakehost/fakeHost";
import { drawing } from "../../workbook/drawings";
import { excelRig, type ExcelRig } from "./excelRig";
import { packing, picture } from "./floatingDrawings";

const mark = (subject: string) => ({ kind: "hardware", subject });

/** Twelve columns of texts, numbers and a formula; sheets of hardware look like it. */
const tall = (rows: number): Drawing =>
  drawing(
    "Tall",
    mark("tall"),
    Array.from({ length: rows }, (_, row) =>
      Array.from({ length: 12 }, (__, column) =>
        column === 11
          ? `=A${row + 1}*2`
          : column % 3 === 0
            ? row * column
            : `text ${row} ${column}`,
      ),
    ),
  );

const rigWith = async (...drawings: readonly Drawing[]): Promise<ExcelRig> => {
  const rig = await excelRig({ sheets: [{ name: "Schedule" }] });
  if (drawings.length > 0) await rig.workbook.write(drawings);
  rig.host.failWith({});
  return rig;
};

/** Requests that it took, none of them larger than Excel allows. */
function counted(rig: ExcelRig): number {
  for (const { bytes, answer } of rig.host.requests) {
    expect(bytes).toBeLessThan(payloadLimit / 2);
    expect(answer).toBeLessThan(payloadLimit / 2);
  }
  const count = rig.host.requests.length;
  rig.host.failWith({});
  return count;
}

describe("round trips", () => {
  test("a schedule of 10,000 rows is read in 4, one of 100 in 2", async () => {
    const large = await rigWith(tall(10_000));
    const block = await large.workbook.read({ kind: "sheet", sheet: "Tall" });
    expect(block.ok && block.value.rows.length).toBe(10_000);
    expect(counted(large)).toBe(4);

    const small = await rigWith(tall(100));
    await small.workbook.read({ kind: "sheet", sheet: "Tall" });
    expect(counted(small)).toBe(2);
  }, 60_000);

  test("10,000 rows are written in 8 and replaced in 12, 100 rows in 5 and 7", async () => {
    const large = await rigWith();
    expect(await large.workbook.write([tall(10_000)])).toMatchObject({ ok: true });
    expect(counted(large)).toBe(8);
    expect(await large.workbook.write([tall(10_000)])).toMatchObject({
      ok: true,
      value: [{ was: "replaced", keptAs: null }],
    });
    expect(counted(large)).toBe(12);

    const small = await rigWith();
    await small.workbook.write([tall(100)]);
    expect(counted(small)).toBe(5);
    await small.workbook.write([tall(100)]);
    expect(counted(small)).toBe(7);
  }, 120_000);

  test("thirty sheets take no more than one", async () => {
    const sheets = Array.from({ length: 30 }, (_, job) =>
      drawing(`Job ${job}`, mark(`Job ${job}`), [["Item"], [`HN ${job}`]]),
    );
    const rig = await rigWith();
    await rig.workbook.write(sheets);
    expect(counted(rig)).toBe(5);
    await rig.workbook.write(sheets);
    expect(counted(rig)).toBe(7);
  });

  test("two hundred pictures of 40 KB each are written in 12 and replaced in 14", async () => {
    const pictures = Array.from({ length: 200 }, (_, row) => ({ ...picture, row, marks: [] }));
    const paint = () => Promise.resolve("A".repeat(40_000));
    const rig = await excelRig({ sheets: [{ name: "Schedule" }] }, "1.15", { paint });
    rig.host.failWith({});
    const outcome = await rig.workbook.write([packing("Packing", pictures)]);
    expect(outcome.ok && outcome.value[0]?.pictures).toBeUndefined();
    expect(counted(rig)).toBe(12);
    await rig.workbook.write([packing("Packing", pictures)]);
    expect(counted(rig)).toBe(14);
  }, 60_000);

  test("looking around takes one each", async () => {
    const rig = await rigWith(tall(3));
    const { workbook } = rig;
    const questions = [
      workbook.name,
      workbook.sheets,
      workbook.activeSheet,
      workbook.selection,
      () => workbook.readSetting("unit"),
    ];
    for (const question of questions) {
      await question();
      expect(counted(rig)).toBe(1);
    }
  });

  test("texts too long for one answer are asked for in halves", async () => {
    const long = Array.from({ length: 200 }, (_, row) => ["x".repeat(30_000), row]);
    const rig = await rigWith(drawing("Long", mark("long"), long));
    const block = await rig.workbook.read({ kind: "sheet", sheet: "Long" });
    expect(block.ok && block.value.rows.map((cells) => cells[1])).toEqual(
      long.map(([, row]) => row),
    );
    expect(await rig.workbook.write([drawing("Long", mark("long"), [["short"]])])).toMatchObject({
      ok: true,
      value: [{ was: "replaced", keptAs: null }],
    });
  }, 60_000);
});
