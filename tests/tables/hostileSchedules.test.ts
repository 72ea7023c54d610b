/** A hundred thousand hostile cells as schedules: no exception, no lost row. */
import { expect, test } from "@jest/globals";
import { isBlank, type CellValue } from "../../src/core/base/cell";
import { starterKitBook } from "../../src/core/kitbook/starter/starterKitBook";
import { checkItems } from "../../src/core/pricing/item";
import { estimateRows } from "../core/takeoff/notation";
import { estimate } from "../../src/core/estimate/estimate";
import { usDollar } from "../../src/core/money/currency";
import { readItemTable } from "../../src/tables/itemTable";
import { readSchedule } from "../../src/tables/scheduleTable";
import { hostileCells } from "../core/hostileCells";

const headings = [
  "Job",
  "Mark",
  "Qty",
  "Type",
  "Width",
  "Height",
  "Post height",
  "Tail post",
  "Floor",
  "Closer",
];

function* blocksOf(cells: Iterable<CellValue>, width: number, height: number) {
  let rows: CellValue[][] = [[]];
  for (const cell of cells) {
    const last = rows.at(-1) ?? [];
    if (last.length < width) last.push(cell);
    else if (rows.length < height) rows.push([cell]);
    else {
      yield rows;
      rows = [[cell]];
    }
  }
  yield rows;
}

test("every row below the headings is an opening, not counted with a reason, or skipped with a note", () => {
  for (const rows of blocksOf(hostileCells(70_000, 7), headings.length, 500)) {
    const block = { sheet: "S", row: 0, column: 0, rows: [headings, ...rows] };
    const reading = readSchedule(block);
    if (!reading.ok) throw new Error(reading.error.message);
    const { schedule, findings } = reading.value;
    const blank = rows.filter((row) => row.every(isBlank)).length;
    const skipped = findings.filter(
      ({ code }) => code === "total-row" || code === "title-row",
    ).length;
    expect(schedule.rows.length + blank + skipped).toBe(rows.length);
    const result = estimate({
      schedules: [schedule],
      kitBook: starterKitBook,
      items: [],
      unit: "in",
      currency: usDollar,
      showLength: String,
    });
    const seen = result.jobs.reduce((sum, job) => sum + job.rows, 0);
    expect(seen).toBe(schedule.rows.length);
    const uncounted = result.jobs.flatMap((job) => job.uncounted);
    expect(uncounted.every((row) => row.findings.some(({ level }) => level === "stop"))).toBe(true);
  }
});

test("any rows at all can stand where a schedule or an items table is looked for", () => {
  for (const rows of blocksOf(hostileCells(30_000, 3), 8, 60)) {
    const block = { sheet: "S", row: 0, column: 0, rows };
    expect(() => readSchedule(block)).not.toThrow();
    const items = readItemTable({
      ...block,
      rows: [["Code", "Description", "Unit", "Unit cost", "Weight"], ...rows],
    });
    expect(() => checkItems(items ?? [], usDollar)).not.toThrow();
  }
});

test("a schedule of nothing is an estimate of nothing", () => {
  expect(estimateRows([])).toMatchObject({ complete: true, jobs: [] });
});
