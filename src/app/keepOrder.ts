/**
 * What is done with an order: kept as a draft, sent, received, or taken out while it is a draft.
 *
 * Each reads the workbook anew, with what a person has typed since, and then writes the order's
 * sheets, the sheets of the book and the record as one: where anything is refused, all of it is as it
 * was (`orderBookRecord.ts` says how).
 */
import { dateText, dayOf } from "../core/base/date";
import { err, ok, type Result } from "../core/base/result";
import {
  addDraft,
  receiveOrder,
  redraft,
  removeDraft as removeFrom,
  sendOrder,
  usedNumbers,
} from "../core/purchasing/orderBooks";
import { nextOrderNumber } from "../core/purchasing/orderNumber";
import type { OrderRecord } from "../core/purchasing/orderRecord";
import type { OrderBooks } from "../core/purchasing/standing";
import { goneSheet, orderBookDrawings } from "../sheets/orderBookSheets";
import { orderMark, orderSheetKinds, supplierMark } from "../sheets/orderWish";
import type { Drawing, SheetMark } from "../workbook/drawing";
import { sameMark } from "../workbook/sheetStamp";
import type { Workbook, WorkbookFault, WriteOptions, WrittenSheet } from "../workbook/workbook";
import { readOrderBook, sizeTextOf, withStock, type OrderBook } from "./orderBook";
import { holdRecord, settleRecord, type BookRecord } from "./orderBookRecord";
import { contentsOf, orderDrawings, sentDrawings } from "./orderDrawings";
import type { JobsOrder } from "./orderJobs";
import { changedSheets } from "./sentSheets";
import { readSettings, type Settings } from "./settings";

/** When, a date serial, and who says so: a name or initials, or the empty text. */
export type BookAct = { readonly day: number; readonly who: string };

/** Why it was not done; everything is as it was. `message` is plain words with a way on. */
export type BookFault = { readonly code: string; readonly message: string };

export type KeptOrder = {
  readonly number: string;
  readonly sheets: readonly WrittenSheet[];
};

type Outcome = Promise<Result<KeptOrder, BookFault>>;

/**
 * Keeps an order as a draft: under the next number of the firm's pattern, or in the place of the
 * draft with `number`. The workbook is the one whose order book the order was worked out with.
 */
export async function keepDraft(
  workbook: Workbook,
  order: JobsOrder,
  act: Pick<BookAct, "day"> & { readonly number: string | null },
  options: WriteOptions = {},
): Outcome {
  const read = await readToWrite(workbook, act.day);
  if (!read.ok) return read;
  const { settings } = read.value;
  const book = withStock(read.value.book, order.stock, act.day);
  if (order.book.kept.text !== book.kept.text) {
    return err({
      code: "book-has-changed",
      message:
        "The order was worked out with another order book than this workbook keeps now. Work it out again, with this workbook first.",
    });
  }
  const contents = contentsOf(order);
  if (contents.packs.length + contents.covers.length === 0) {
    return err({ code: "nothing-to-order", message: "Nothing is needed, so there is no order." });
  }
  const before = book.books.orders.find((each) => each.number === act.number);
  const number =
    act.number ??
    nextOrderNumber(order.numbers, dayOf(act.day)?.year ?? 0, usedNumbers(book.books));
  const drafted =
    act.number === null
      ? ok(addDraft(book.books, number, contents, act.day))
      : redraft(book.books, number, contents);
  if (!drafted.ok) return drafted;
  const drawn = orderDrawings(order, contents, number, `Draft of ${dateText(act.day)}`);
  const gone = before === undefined ? [] : await goneOf(workbook, before, drawn);
  const sheets = [...drawn, ...gone];
  return writeBook(workbook, { book, settings }, drafted.value, number, sheets, options);
}

/** Takes a draft out. Its sheets say so, and its number is never given again. */
export async function removeDraft(
  workbook: Workbook,
  number: string,
  { day }: Pick<BookAct, "day">,
  options: WriteOptions = {},
): Outcome {
  const read = await readToWrite(workbook, day);
  if (!read.ok) return read;
  const { books } = read.value.book;
  const removed = removeFrom(books, number);
  if (!removed.ok) return removed;
  const order = books.orders.find((each) => each.number === number);
  const gone = order === undefined ? [] : await goneOf(workbook, order, []);
  return writeBook(workbook, read.value, removed.value, number, gone, options);
}

/**
 * Marks a draft as sent. It is frozen from then on, and what it takes off the shelf is taken. The
 * suppliers' sheets must say what is on record: what was typed over on them is an error that names
 * the cell.
 */
export async function sendKept(
  workbook: Workbook,
  number: string,
  { day, who }: BookAct,
  options: WriteOptions = {},
): Outcome {
  const read = await readToWrite(workbook, day);
  if (!read.ok) return read;
  const { books } = read.value.book;
  const order = books.orders.find((each) => each.number === number);
  if (order?.state === "draft") {
    const changed = await changedSheets(workbook, order);
    if (!changed.ok) return changed;
    const [first] = changed.value;
    if (first !== undefined) {
      return err({ code: "sheet-differs", message: first.message });
    }
  }
  const sent = sendOrder(books, number, day, who);
  if (!sent.ok) return sent;
  const record = sent.value.orders.find((each) => each.number === number);
  const sheets =
    record === undefined ? [] : sentDrawings(record, number, `Sent on ${dateText(day)}`);
  return writeBook(workbook, read.value, sent.value, number, sheets, options);
}

/** Marks a sent order as received: all of it has come, and what is left over is stock on hand. */
export async function receiveKept(
  workbook: Workbook,
  number: string,
  { day, who }: BookAct,
  options: WriteOptions = {},
): Outcome {
  const read = await readToWrite(workbook, day);
  if (!read.ok) return read;
  const received = receiveOrder(read.value.book.books, number, day, who);
  if (!received.ok) return received;
  return writeBook(workbook, read.value, received.value, number, [], options);
}

type ToWrite = { readonly book: OrderBook; readonly settings: Settings };

async function readToWrite(workbook: Workbook, day: number): Promise<Result<ToWrite, BookFault>> {
  const settings = await readSettings(workbook);
  const book = await readOrderBook(workbook, settings, day);
  if (!book.ok) return book;
  const stop = book.value.findings.find(({ level }) => level === "stop");
  return stop === undefined
    ? ok({ book: book.value, settings })
    : err({ code: stop.code, message: stop.message });
}

/** Notices for the order's sheets that stand and that are not drawn again. */
async function goneOf(
  workbook: Workbook,
  order: OrderRecord,
  drawn: readonly Drawing[],
): Promise<readonly Drawing[]> {
  const marks: readonly SheetMark[] = [
    ...order.charges.map(({ supplier }) => supplierMark(supplier, order.number)),
    ...orderSheetKinds.map((kind) => orderMark(kind, order.number)),
  ];
  const stale = marks.filter(
    (mark) => !drawn.some((each) => each.mark !== null && sameMark(each.mark, mark)),
  );
  const words =
    drawn.length === 0
      ? `Draft ${order.number} was removed. Nothing reads this sheet: delete it.`
      : `Order ${order.number} has this sheet no more. Nothing reads it: delete it.`;
  return (await workbook.sheets()).flatMap(({ name, mark }) =>
    mark !== null && stale.some((each) => sameMark(each, mark))
      ? [goneSheet(name, mark, words)]
      : [],
  );
}

async function writeBook(
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
  return written.ok ? ok({ number, sheets: written.value }) : written;
}
