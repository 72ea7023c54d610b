/** What the core makes of the demo after some cells were typed over: what a pane must show. */
import type { MemoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { currencyIn, defaultSettings } from "../../src/app/settings";
import { takeOffWorkbook } from "../../src/app/reading/takeOffWorkbook";
import { drawTakeOff } from "../../src/app/writing/writeSheets";
import { finish } from "../../src/core/base/steps";
import { sumOf } from "../../src/core/money/amounts";
import { moneyText } from "../../src/core/money/writeMoney";
import type { Workbook } from "../../src/workbook/workbook";
import type { WorkbookSnapshot } from "../../src/workbook/snapshot";
import { demoWorkbook } from "../app/typedWorkbook";
import { cellAt } from "../workbook/rig";

export type TypedCells = Readonly<Record<string, Readonly<Record<string, string | number>>>>;

export type DemoCount = {
  readonly rows: number;
  readonly counted: number;
  /** Of all jobs that have one, such as `$12,345.60`. */
  readonly material: string;
};

/** `typed` by sheet, then by cell. */
export const demoCount = async (typed: TypedCells = {}): Promise<DemoCount> =>
  countOf(await typedDemo(typed));

/** The count of any workbook. */
export async function countOf(workbook: Workbook): Promise<DemoCount> {
  const { jobs } = (await takeOff(workbook)).estimate;
  const rows = jobs.reduce((sum, job) => sum + job.rows, 0);
  const totals = jobs.flatMap(({ material: { total } }) => (total === null ? [] : [total]));
  return {
    rows,
    counted: rows - jobs.reduce((sum, job) => sum + job.uncounted.length, 0),
    material: moneyText(sumOf(totals), currencyIn(defaultSettings)),
  };
}

/** The demo with `typed` in it and the sheets of its count behind. */
export async function writtenDemo(typed: TypedCells = {}): Promise<WorkbookSnapshot> {
  const workbook = await typedDemo(typed);
  const drawings = finish(drawTakeOff(await takeOff(workbook), defaultSettings));
  const written = await workbook.write(drawings);
  if (!written.ok) throw new Error(written.error.message);
  return workbook.snapshot();
}

async function typedDemo(typed: TypedCells): Promise<MemoryWorkbook> {
  const workbook = await demoWorkbook();
  for (const [sheet, cells] of Object.entries(typed)) {
    for (const [cell, value] of Object.entries(cells)) {
      workbook.type({ sheet, ...cellAt(cell) }, value);
    }
  }
  return workbook;
}

async function takeOff(workbook: Workbook) {
  const counted = await takeOffWorkbook(workbook, defaultSettings);
  if (!counted.ok) throw new Error(counted.error.message);
  return counted.value;
}
