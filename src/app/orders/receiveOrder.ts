/** What has come of a sent order: all that is still to come, or some of its lines. */
import type { Result } from "../../core/base/result";
import { receiveLines, receiveOrder } from "../../core/purchasing/books/orderBooks";
import type { OrderFault } from "../../core/purchasing/books/orderRecord";
import type { ReceivedLine } from "../../core/purchasing/books/receipt";
import { standingWord } from "../../core/purchasing/books/receipts";
import type { OrderBooks } from "../../core/purchasing/books/standing";
import type { Workbook, WriteOptions } from "../../workbook/workbook";
import { readToWrite, writeBook, type BookAct, type Outcome } from "./writeBook";

/** All that is still to come has come; what is left over is stock on hand. */
export const receiveKept = (
  workbook: Workbook,
  number: string,
  { day, who }: BookAct,
  options: WriteOptions = {},
): Outcome =>
  received(workbook, number, day, (books) => receiveOrder(books, number, day, who), options);

/** Some of it has come, or will not come. */
export type ReceiptAct = BookAct & {
  readonly lines: readonly ReceivedLine[];
  /** Why lines are closed short; the empty text where none is. */
  readonly reason: string;
  /** Whether more than is still to come of a line is right; it is refused otherwise. */
  readonly isSure: boolean;
};

/** The fault of more than was to come; such a receipt can be made again with `isSure`. */
export const moreThanOrdered: OrderFault["code"] = "more-than-ordered";

export const receiveKeptLines = (
  workbook: Workbook,
  number: string,
  { day, who, lines, reason, isSure }: ReceiptAct,
  options: WriteOptions = {},
): Outcome =>
  received(
    workbook,
    number,
    day,
    (books) => receiveLines(books, number, { day, who, lines, reason: reason.trim() }, isSure),
    options,
  );

async function received(
  workbook: Workbook,
  number: string,
  day: number,
  receive: (books: OrderBooks) => Result<OrderBooks, OrderFault>,
  options: WriteOptions,
): Outcome {
  const read = await readToWrite(workbook, day);
  if (!read.ok) return read;
  const { books } = read.value.book;
  const after = receive(books);
  if (!after.ok) return after;
  const written = await writeBook(workbook, read.value, after.value, number, [], options);
  return written.ok
    ? { ok: true, value: { ...written.value, says: newsOf(books, after.value, number) } }
    : written;
}

/** What a receipt changed besides the shelf: the order's state, and promises that others gave up. */
function newsOf(before: OrderBooks, after: OrderBooks, number: string): readonly string[] {
  const order = after.orders.find((each) => each.number === number);
  return [
    ...(order === undefined ? [] : [`Order ${number} is ${standingWord(order)}.`]),
    ...after.orders.flatMap((each, at) =>
      each.givenUp
        .slice(before.orders[at]?.givenUp.length ?? 0)
        .map(
          ({ item, pieces, job }) =>
            `Order ${each.number} counted on ${pieces} of ${item}${job === null ? "" : ` for ${job}`} from it: needed again.`,
        ),
    ),
  ];
}
