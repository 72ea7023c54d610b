/** What every act on the order book does: read the workbook anew, write sheets and record as one. */
import { err, ok, type Result } from "../../core/base/result";
import type { OrderBooks } from "../../core/purchasing/books/standing";
import { orderBookDrawings } from "../../sheets/orders/orderBookSheets";
import type { Drawing } from "../../workbook/drawing";
import type { Workbook, WorkbookFault, WriteOptions, WrittenSheet } from "../../workbook/workbook";
import { readOrderBook, sizeTextOf, type OrderBook } from "./orderBook";
import { holdRecord, settleRecord, type BookRecord } from "./orderBookRecord";
import { readSettings, type Settings } from "../settings";

/** When, a date serial, and who says so: a name or initials, or the empty text. */
export type BookAct = { readonly day: number; readonly who: string };

/** Why it was not done; everything is as it was. `message` is plain words with a way on. */
export type BookFault = { readonly code: string; readonly message: string };

export type KeptOrder = {
  readonly number: string;
  readonly sheets: readonly WrittenSheet[];
  /** What else there is to know of it, in sentences. */
  readonly says: readonly string[];
};

export type Outcome = Promise<Result<KeptOrder, BookFault>>;

export type ToWrite = { readonly book: OrderBook; readonly settings: Settings };

/** Error: it cannot be read, or something would be lost. */
export async function readToWrite(
  workbook: Workbook,
  day: number,
): Promise<Result<ToWrite, BookFault>> {
  const settings = await readSettings(workbook);
  const book = await readOrderBook(workbook, settings, day);
  if (!book.ok) return book;
  const stop = book.value.findings.find(({ level }) => level === "stop");
  return stop === undefined
    ? ok({ book: book.value, settings })
    : err({ code: stop.code, message: stop.message });
}

/**
 * Writes an order's sheets, the sheets of the book and the record as one: where anything is refused,
 * all of it is as it was (`orderBookRecord.ts` says how).
 */
export async function writeBook(
  workbook: Workbook,
  { book, settings }: ToWrite,
  books: OrderBooks,
  number: string,
  sheets: readonly Drawing[],
  options: WriteOptions,
): Promise<Result<KeptOrder, WorkbookFault>> {
  const { kept, counts, carried } = book;
  const { lengths, fraction } = settings;
  const change = kept.record.change + 1;
  const record: BookRecord = { change, books, counts, style: { lengths, fraction } };
  const sizeText = sizeTextOf(record);
  const drawings = [...sheets, ...orderBookDrawings({ books, change, sizeText, carried })];
  const held = await holdRecord(workbook, record, kept.text);
  if (!held.ok) return held;
  const written = await workbook.write(drawings, options);
  const settled = written.ok ? record : kept.text;
  // Refused twice, the next reading settles it by what the sheets show.
  const settling = await settleRecord(workbook, settled);
  if (!settling.ok) await settleRecord(workbook, settled);
  return written.ok ? ok({ number, sheets: written.value, says: [] }) : written;
}
