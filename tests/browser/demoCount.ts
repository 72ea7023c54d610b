/** What the core makes of the demo after some cells were typed over: what a pane must show. */
import { currencyIn, defaultSettings } from "../../src/app/settings";
import { takeOffWorkbook } from "../../src/app/takeOffWorkbook";
import { sumOf } from "../../src/core/money/amounts";
import { moneyText } from "../../src/core/money/writeMoney";
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
export async function demoCount(typed: TypedCells = {}): Promise<DemoCount> {
  const workbook = await demoWorkbook();
  for (const [sheet, cells] of Object.entries(typed)) {
    for (const [cell, value] of Object.entries(cells)) {
      workbook.type({ sheet, ...cellAt(cell) }, value);
    }
  }
  const counted = await takeOffWorkbook(workbook, defaultSettings);
  if (!counted.ok) throw new Error(counted.error.message);
  const { jobs } = counted.value.estimate;
  const rows = jobs.reduce((sum, job) => sum + job.rows, 0);
  const totals = jobs.flatMap(({ material: { total } }) => (total === null ? [] : [total]));
  return {
    rows,
    counted: rows - jobs.reduce((sum, job) => sum + job.uncounted.length, 0),
    material: moneyText(sumOf(totals), currencyIn(defaultSettings)),
  };
}
