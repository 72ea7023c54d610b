/**
 * What is done with an order before it comes: kept as a draft, sent, or taken out while it is a draft.
 *
 * Each reads the workbook anew, with what a person has typed since, and writes all of it as one
 * (`writeBook.ts`). What comes of it is `receiveOrder.ts`.
 */
import { dateText, dayOf } from "../../core/base/date";
import { err, ok } from "../../core/base/result";
import {
  addDraft,
  redraft,
  removeDraft as removeFrom,
  sendOrder,
  usedNumbers,
} from "../../core/purchasing/books/orderBooks";
import { nextOrderNumber } from "../../core/purchasing/books/orderNumber";
import type { OrderRecord } from "../../core/purchasing/books/orderRecord";
import { goneSheet } from "../../sheets/orders/orderBookSheets";
import { orderMark, orderSheetKinds, supplierMark } from "../../sheets/orders/orderWish";
import type { Drawing, SheetMark } from "../../workbook/drawing";
import { sameMark } from "../../workbook/sheetStamp";
import type { Workbook, WriteOptions } from "../../workbook/workbook";
import { withStock } from "./orderBook";
import { contentsOf, orderDrawings, sentDrawings } from "./orderDrawings";
import type { JobsOrder } from "./orderJobs";
import { changedSheets } from "./sentSheets";
import { readToWrite, writeBook, type BookAct, type Outcome } from "./writeBook";

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
    return err({ code: "nothing-to-order", message: nothingToOrder(order) });
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

function nothingToOrder({ plan }: JobsOrder): string {
  const stop = plan.findings.find(({ level }) => level === "stop");
  return stop === undefined
    ? "Nothing is needed, so there is no order."
    : `Nothing of what is needed can be ordered, so there is no order. ${stop.message}`;
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
