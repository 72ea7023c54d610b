/** Workbooks in memory for tests: sheets as rows of cells. */
import { memoryWorkbook, type MemoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { demoDrawings } from "../../src/app/demo/demoDrawings";
import type { CellValue } from "../../src/core/base/cell";
import type { SheetSnapshot, WorkbookSnapshot } from "../../src/workbook/snapshot";

export type TypedSheets = Readonly<Record<string, readonly (readonly CellValue[])[]>>;

/** A workbook with the given sheets, in order; the first is active. */
export const workbookOf = (sheets: TypedSheets): MemoryWorkbook =>
  memoryWorkbook(snapshotOf(sheets));

export const snapshotOf = (sheets: TypedSheets): WorkbookSnapshot => ({
  name: "Job.xlsx",
  sheets: Object.entries(sheets).map(([name, rows]) => sheetOf(name, rows)),
  activeSheet: Object.keys(sheets)[0] ?? "",
  styles: [],
  names: [],
  settings: {},
  leftOut: [],
});

const sheetOf = (name: string, rows: readonly (readonly CellValue[])[]): SheetSnapshot => ({
  name,
  visible: true,
  isProtected: false,
  mark: null,
  written: null,
  rows: rows.map((cells) => cells.map((value) => (value === null ? null : { value }))),
  columnWidths: [],
  rowHeights: [],
  frozenRows: 0,
  frozenColumns: 0,
  merges: [],
  tables: [],
  choices: [],
  print: null,
});

/** The demo workbook, as it is before anything is written by it. */
export async function demoWorkbook(): Promise<MemoryWorkbook> {
  const workbook = workbookOf({ Start: [] });
  const written = await workbook.write(demoDrawings());
  if (!written.ok) throw new Error(written.error.message);
  workbook.remove("Start");
  return workbook;
}

export const scheduleHeadings = ["Job", "Mark", "Qty", "Type", "Width", "Height", "Post height"];

/** A schedule of one job, with a row for each text such as `A-1 | 2 | sliding door | 8' | 7' | 8'`. */
export const scheduleRows = (...lines: readonly string[]): readonly (readonly CellValue[])[] => [
  scheduleHeadings,
  ...lines.map((line) => ["Crib", ...line.split("|").map((cell) => cell.trim() || null)]),
];
