/** A workbook of several: read, taken off, and its purchasing sheets found. */
import { ok, type Result } from "../../core/base/result";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import type { OtherInputs } from "../reading/inputs";
import { readKeptBook, type OrderBook } from "./orderBook";
import { readOrderTables, type OrderTables } from "./orderTables";
import { readSettings, type Settings } from "../settings";
import { takeOffWorkbook } from "../reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../reading/workbookTakeOff";

/** A workbook with the name by which the person tells it from the others. */
export type OrderFile = { readonly file: string; readonly workbook: Workbook };

/** A workbook that was read and taken off. */
export type CountedFile = {
  readonly file: string;
  readonly settings: Settings;
  readonly takeOff: WorkbookTakeOff;
  readonly tables: OrderTables;
  /** Without the counts of stock sheets, which may stand in another of the workbooks. */
  readonly book: OrderBook;
};

/**
 * `today` is a date serial; `others` is what the person named instead of the workbook's own. Error: a
 * workbook could not be read.
 */
export async function countFile(
  { file, workbook }: OrderFile,
  today: number,
  others: OtherInputs = {},
): Promise<Result<CountedFile, WorkbookFault>> {
  const settings = await readSettings(workbook);
  const takeOff = await takeOffWorkbook(workbook, settings, others);
  if (!takeOff.ok) return takeOff;
  const tables = await readOrderTables(workbook);
  if (!tables.ok) return tables;
  const book = await readKeptBook(workbook, settings, today);
  if (!book.ok) return book;
  return ok({ file, settings, takeOff: takeOff.value, tables: tables.value, book: book.value });
}
