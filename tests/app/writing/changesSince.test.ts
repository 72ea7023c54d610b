import { describe, expect, test } from "@jest/globals";
import { changesSince } from "../../../src/app/writing/changesSince";
import {
  keepLastWritten,
  readLastWritten,
  summaryOf,
  type JobSummary,
  type WrittenSummary,
} from "../../../src/app/writing/lastWritten";
import { defaultSettings } from "../../../src/app/settings";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import { usDollar } from "../../../src/core/money/currency";
import { demoWorkbook, workbookOf } from "../typedWorkbook";

const crib: JobSummary = {
  job: "Crib",
  counted: 10,
  total: 50_000,
  lines: { bolt: 100, nut: 100 },
};
const summary = (...jobs: readonly JobSummary[]): WrittenSummary => ({ currency: "USD", jobs });

describe("what changed since the sheets were last written", () => {
  test.each<readonly [string, WrittenSummary | null, WrittenSummary, string]>([
    ["nothing was written before", null, summary(crib), ""],
    [
      "nothing changed",
      summary(crib),
      summary({ ...crib, job: "CRIB" }),
      "Nothing has changed since these sheets were last written.",
    ],
    [
      "openings, pieces and money changed",
      summary(crib),
      summary({ ...crib, counted: 11, total: 51_250, lines: { bolt: 104, washer: 1 } }),
      "Since these sheets were last written, 1 more opening is counted, 5 more and 100 fewer pieces are needed in 3 lines and the material costs $12.50 more.",
    ],
    [
      "less is needed",
      summary(crib),
      summary({ ...crib, counted: 8, total: 49_999, lines: { bolt: 99, nut: 100 } }),
      "Since these sheets were last written, 2 fewer openings are counted, 1 fewer piece is needed in 1 line and the material costs $0.01 less.",
    ],
    [
      "a job came",
      summary(crib),
      summary(crib, { ...crib, job: "Cage" }),
      "Since these sheets were last written, Cage is new.",
    ],
    ["the job was never written", summary({ ...crib, job: "Cage" }), summary(crib), ""],
    [
      "amounts in another currency are not compared",
      { ...summary(crib), currency: "EUR" },
      summary({ ...crib, total: 1 }),
      "Nothing has changed since these sheets were last written.",
    ],
  ])("%s", (_, before, now, sentence) => {
    expect(changesSince(before, now, usDollar)).toBe(sentence);
  });
});

describe("what was last written", () => {
  test("is kept in the workbook and read back", async () => {
    const workbook = await demoWorkbook();
    const takeOff = await takeOffWorkbook(workbook, defaultSettings);
    if (!takeOff.ok) throw new Error(takeOff.error.message);
    const now = summaryOf(takeOff.value.estimate.jobs, usDollar);
    expect(now.jobs.length).toBeGreaterThan(1);
    await keepLastWritten(workbook, null, now);
    expect(await readLastWritten(workbook)).toEqual(now);
  });

  test("keeps the jobs that are not written this time", async () => {
    const workbook = workbookOf({ Start: [] });
    await keepLastWritten(workbook, summary(crib), summary({ ...crib, job: "Cage" }));
    const kept = await readLastWritten(workbook);
    expect(kept?.jobs.map(({ job }) => job)).toEqual(["Crib", "Cage"]);
  });

  test.each([["no JSON at all"], ["{}"], ['{"currency":"USD","jobs":[{"job":1}]}'], ["null"]])(
    "is nothing where the workbook holds %s",
    async (text) => {
      const workbook = workbookOf({ Start: [] });
      await workbook.writeSetting("lastWritten", text);
      expect(await readLastWritten(workbook)).toBeNull();
    },
  );
});
