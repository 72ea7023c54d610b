import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { keptBlocks } from "../../../src/app/reading/keptBlocks";
import { enteredLoads } from "../../../src/app/pricing/enteredLoads";
import { keptTakeOff } from "../../../src/app/reading/keptTakeOff";
import { defaultSettings, type Settings } from "../../../src/app/settings";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../../../src/app/reading/workbookTakeOff";
import type { CellValue } from "../../../src/core/base/cell";
import { finish } from "../../../src/core/base/steps";
import { pieceKey } from "../../../src/core/takeoff/partColumn";
import type { Workbook } from "../../../src/workbook/workbook";
import { demoWorkbook, scheduleHeadings, workbookOf } from "../typedWorkbook";

/** What a person sees of a take-off as lines of text, without the order of a job's lines. */
const seen = ({ estimate, findings, complete, inputs }: WorkbookTakeOff): readonly string[] => [
  `complete: ${String(complete)}`,
  ...inputs.schedules.flatMap(({ rows }) => rows.map((row) => JSON.stringify(row))),
  ...findings.map((finding) => JSON.stringify(finding)).sort(),
  ...estimate.jobs.flatMap(({ job, rows, uncounted, material, takeOff }) => [
    JSON.stringify([job, rows, uncounted.map(({ place }) => place.row), material.total]),
    ...takeOff.lines.map((line) => `${pieceKey(line.item, line.size)}: ${line.quantity}`).sort(),
    ...takeOff.openings.map(({ mark, place }) => `${mark} in row ${place.row}`),
  ]),
];

/** Only the first line that differs: a difference of two whole take-offs is past printing. */
function expectSame(one: readonly string[], other: readonly string[]): void {
  const at = one.findIndex((line, index) => line !== other[index]);
  expect({ line: one[at], count: one.length }).toEqual({ line: other[at], count: other.length });
}

async function fresh(workbook: Workbook, settings: Settings) {
  const takeOff = await takeOffWorkbook(workbook, settings);
  if (!takeOff.ok) throw new Error(takeOff.error.message);
  return seen(takeOff.value);
}

const job = fc.constantFrom("Crib", "Cage", null);
const type = fc.constantFrom("sliding door", "hinged door", "slidng", "fixed transom", null);
const size = fc.constantFrom("4'-0\"", "8'", 84, 96, 2134, "wide", null);
const row = fc
  .tuple(job, fc.constantFrom("A-1", "A-2", "A-3", null), fc.constantFrom(1, 2, "two"), type)
  .chain((start) => fc.tuple(size, size, size).map((sizes): CellValue[] => [...start, ...sizes]));
const change = fc.oneof(
  fc.record({ at: fc.nat(460), column: fc.nat(6), value: fc.oneof(size, type, job) }),
  fc.record({ at: fc.nat(460), title: fc.constantFrom("Cage", "Total", "Crib") }),
  fc.constantFrom<Partial<Settings>>({ unit: "mm" }, { lengths: "inches" }, { unit: "in" }),
);

describe("a take-off that is kept while the workbook changes", () => {
  test("is what a fresh take-off is, whatever is typed in whatever order", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(row, { minLength: 1, maxLength: 30 }),
        fc.array(change, { minLength: 1, maxLength: 6 }),
        async (pattern, changes) => {
          // Long enough for several parts.
          const rows = Array.from({ length: 460 }, (_, at) => pattern[at % pattern.length] ?? []);
          const workbook = workbookOf({ Schedule: [scheduleHeadings, ...rows] });
          const blocks = keptBlocks(workbook);
          await workbook.watch(blocks.forget);
          const count = keptTakeOff(enteredLoads);
          let settings = defaultSettings;
          for (const each of [{}, ...changes]) {
            if ("title" in each) {
              for (let column = 0; column < 7; column += 1) {
                const value = column === 0 ? each.title : null;
                workbook.type({ sheet: "Schedule", row: each.at + 1, column }, value);
              }
            } else if ("at" in each) {
              const { at, column, value } = each;
              workbook.type({ sheet: "Schedule", row: at + 1, column }, value);
            } else settings = { ...settings, ...each };
            const read = await blocks.read();
            if (!read.ok) throw new Error(read.error.message);
            expectSame(seen(finish(count(read.value, settings))), await fresh(workbook, settings));
          }
        },
      ),
      { numRuns: 8 },
    );
  });

  test("counts no part again that did not change", async () => {
    const rows = Array.from({ length: 1000 }, (_, at) => [
      "Crib",
      `A-${at}`,
      1,
      "sliding door",
      "4'",
      "7'",
      "8'",
    ]);
    const workbook = workbookOf({ Schedule: [scheduleHeadings, ...rows] });
    const blocks = keptBlocks(workbook);
    await workbook.watch(blocks.forget);
    const count = keptTakeOff(enteredLoads);
    const takes = async () => {
      const read = await blocks.read();
      if (!read.ok) throw new Error(read.error.message);
      return finish(count(read.value, defaultSettings)).estimate.takeOff.takes;
    };
    const before = await takes();
    workbook.type({ sheet: "Schedule", row: 500, column: 4 }, "6'");
    const after = await takes();
    expect(after).toHaveLength(before.length);
    expect(after.filter((take) => !before.includes(take))).toHaveLength(1);
  });

  test("keeps the compiled kit book and the items while only openings change", async () => {
    const workbook = await demoWorkbook();
    const blocks = keptBlocks(workbook);
    await workbook.watch(blocks.forget);
    const count = keptTakeOff(enteredLoads);
    const once = async () => {
      const read = await blocks.read();
      if (!read.ok) throw new Error(read.error.message);
      return finish(count(read.value, defaultSettings));
    };
    const before = await once();
    workbook.type({ sheet: "Schedule", row: 2, column: 4 }, "6'");
    const after = await once();
    expect(after.estimate.kitBook).toBe(before.estimate.kitBook);
    expect(after.inputs.items).toBe(before.inputs.items);
    workbook.type({ sheet: "Items", row: 2, column: 4 }, 1234.5);
    expect((await once()).inputs.items).not.toBe(before.inputs.items);
  });
});
