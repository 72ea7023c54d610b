/** The firm's books: its orders and the movements of its stock, which change together. */
import { err, ok, type Result } from "../../base/result";
import { pieces } from "../../base/units";
import { draftFault } from "./draftFault";
import {
  changeDraft,
  draftOrder,
  markSent,
  takenChange,
  type OrderContents,
  type OrderFault,
  type OrderRecord,
  type OrderStep,
} from "./orderRecord";
import type { Receipt } from "./receipt";
import { allOpen } from "./receipts";
import { offcutChanges, takeReceipt } from "./takeReceipt";
import { progressOf } from "./orderProgress";
import { giveUpPromises } from "./giveUpPromises";
import { openPromises, type OpenPromise } from "./promises";
import { sizedKey } from "../sizedItem";
import { piecesByKey } from "../sizedPieces";
import { sentOrders, type OrderBooks } from "./standing";
import { addMovements, stockOnHand } from "./stockMovements";

/** Adds a draft behind the others. @throws RangeError when its number has been used. */
export function addDraft(
  books: OrderBooks,
  number: string,
  contents: OrderContents,
  day: number,
): OrderBooks {
  if (usedNumbers(books).includes(number)) throw new RangeError(`Number used: ${number}`);
  const after = sentOrders(books).map((order) => order.number);
  return { ...books, orders: [...books.orders, draftOrder(number, contents, day, after)] };
}

/** The draft with that number, worked out anew. */
export const redraft = (
  books: OrderBooks,
  number: string,
  contents: OrderContents,
): Result<OrderBooks, OrderFault> =>
  takeStep(books, number, (order) => {
    const after = sentOrders(books).map((sent) => sent.number);
    const changed = changeDraft(order, contents, after);
    return changed.ok ? ok({ order: changed.value, changes: [] }) : changed;
  });

/** Takes a draft out; its number is never given again. */
export function removeDraft(books: OrderBooks, number: string): Result<OrderBooks, OrderFault> {
  const order = books.orders.find((each) => each.number === number);
  if (order === undefined) return err(unknown(number));
  if (order.state !== "draft") {
    const message = `Order ${number} has been sent and stays in the book.`;
    return err({ code: "order-is-frozen", number, message });
  }
  const orders = books.orders.filter((each) => each !== order);
  return ok({ ...books, orders, removed: [...books.removed, number] });
}

/** Every number that has been given. */
export const usedNumbers = ({ orders, removed }: OrderBooks): readonly string[] => [
  ...orders.map(({ number }) => number),
  ...removed,
];

/**
 * Marks a draft as sent: it is frozen, and what it takes off the shelf is taken, with what it was
 * promised and has come since. Error also where the books have moved on under the draft.
 */
export function sendOrder(
  books: OrderBooks,
  number: string,
  day: number,
  who: string,
): Result<OrderBooks, OrderFault> {
  const order = books.orders.find((each) => each.number === number);
  const fault = order?.state === "draft" ? draftFault(books, order) : null;
  if (fault !== null) return err(fault);
  const sent = takeStep(books, number, (draft) => markSent(draft, day, who));
  return sent.ok ? ok(keepPromises(sent.value, day, who)) : sent;
}

/** Marks a sent order as received: all of it that is still to come has come. */
export function receiveOrder(
  books: OrderBooks,
  number: string,
  day: number,
  who: string,
): Result<OrderBooks, OrderFault> {
  const order = books.orders.find((each) => each.number === number);
  const lines = order === undefined ? [] : allOpen(order);
  return receiveLines(books, number, { day, who, reason: "", lines }, false);
}

/**
 * Takes in what has come of a sent order: what is left over is on the shelf, and promises are kept
 * from it. Where lines are closed short, later orders give up what they were promised of that and can
 * get from nowhere else, the latest first. `isSure`: more than was to come is taken in too.
 */
export function receiveLines(
  books: OrderBooks,
  number: string,
  receipt: Receipt,
  isSure: boolean,
): Result<OrderBooks, OrderFault> {
  const owed = owedTo(books, number);
  const received = takeStep(books, number, (order) => takeReceipt(order, receipt, isSure, owed));
  if (!received.ok) return received;
  const isShort = receipt.lines.some(({ isClosed }) => isClosed);
  const kept = keepPromises(received.value, receipt.day, receipt.who);
  return ok(isShort ? giveUpPromises(kept) : kept);
}

function takeStep(
  books: OrderBooks,
  number: string,
  step: (order: OrderRecord) => Result<OrderStep, OrderFault>,
): Result<OrderBooks, OrderFault> {
  const { orders, movements } = books;
  const at = orders.findIndex((order) => order.number === number);
  const order = orders[at];
  if (order === undefined) return err(unknown(number));
  const taken = step(order);
  if (!taken.ok) return taken;
  return ok({
    ...books,
    orders: orders.with(at, taken.value.order),
    movements: addMovements(movements, taken.value.changes),
  });
}

const unknown = (number: string): OrderFault => ({
  code: "order-unknown",
  number,
  message: `There is no order ${number}.`,
});

/**
 * Takes what orders were promised off the shelf as far as it is there, the earlier order first. Of a
 * bar that an order gets after it was received the offcut is kept, and may be promised too.
 */
function keepPromises(books: OrderBooks, day: number, who: string): OrderBooks {
  const there = piecesByKey(stockOnHand(books.movements), sizedKey);
  const changes = openPromises(books.orders, books.movements).flatMap((promise) => {
    const key = sizedKey(promise);
    const kept = Math.min(promise.pieces, there.get(key) ?? 0);
    const order = books.orders.find(({ number }) => number === promise.order);
    if (kept === 0 || order === undefined) return [];
    there.set(key, (there.get(key) ?? 0) - kept);
    return [takenChange(order, { ...promise, pieces: pieces(kept) }, day, who)];
  });
  if (changes.length === 0) return books;
  const taken = { ...books, movements: addMovements(books.movements, changes) };
  const offcuts = books.orders.flatMap((order) =>
    order.state === "received"
      ? offcutChanges(
          order,
          progressOf(order, owedTo(books, order.number)),
          progressOf(order, owedTo(taken, order.number)),
          { day, who },
        )
      : [],
  );
  return keepPromises({ ...taken, movements: addMovements(taken.movements, offcuts) }, day, who);
}

const owedTo = ({ orders, movements }: OrderBooks, number: string): readonly OpenPromise[] =>
  openPromises(orders, movements).filter(({ order }) => order === number);
