/** The firm's books: its orders and the movements of its stock, which change together. */
import { err, ok, type Result } from "../base/result";
import { pieces } from "../base/units";
import type { Standing } from "./orderInput";
import {
  markReceived,
  markSent,
  takenChange,
  type OrderFault,
  type OrderRecord,
  type OrderStep,
} from "./orderRecord";
import { openPromises } from "./promises";
import { sizedKey } from "./sizedItem";
import { addUp, piecesByKey, type JobPieces, type SizedPieces } from "./sizedPieces";
import { addMovements, stockOnHand, type StockMovement } from "./stockMovements";

export type OrderBooks = {
  /** In the order in which they were made. */
  readonly orders: readonly OrderRecord[];
  readonly movements: readonly StockMovement[];
};

/** Marks a draft as sent: it is frozen, and what it takes off the shelf is taken. */
export const sendOrder = (
  books: OrderBooks,
  number: string,
  day: number,
  who: string,
): Result<OrderBooks, OrderFault> => takeStep(books, number, (order) => markSent(order, day, who));

/** Marks a sent order as received: what it leaves over is on the shelf, and promises are kept from it. */
export function receiveOrder(
  books: OrderBooks,
  number: string,
  day: number,
  who: string,
): Result<OrderBooks, OrderFault> {
  const received = takeStep(books, number, (order) => markReceived(order, day, who));
  return received.ok ? ok(keepPromises(received.value, day, who)) : received;
}

function takeStep(
  { orders, movements }: OrderBooks,
  number: string,
  step: (order: OrderRecord) => Result<OrderStep, OrderFault>,
): Result<OrderBooks, OrderFault> {
  const at = orders.findIndex((order) => order.number === number);
  const order = orders[at];
  if (order === undefined) {
    return err({ code: "order-unknown", number, message: `There is no order ${number}.` });
  }
  const taken = step(order);
  if (!taken.ok) return taken;
  return ok({
    orders: orders.with(at, taken.value.order),
    movements: addMovements(movements, taken.value.changes),
  });
}

/** Takes what orders were promised off the shelf as far as it is there, the earlier order first. */
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
  return { ...books, movements: addMovements(books.movements, changes) };
}

/**
 * What is free and what the jobs have. Drafts count for nothing. What a sent order brings for stock
 * is free on order until it is received, less what is promised of it; what has come and is promised
 * is not free on the shelf either.
 */
export function standingOf({ orders, movements }: OrderBooks): Standing {
  const sent = orders.filter(({ state }) => state === "sent");
  const received = orders.filter(({ state }) => state === "received");
  const coming = addUp(
    sent.flatMap(({ packs, offcuts }) => [
      ...packs.map(({ item, size, leftOver }) => ({ item, size, pieces: leftOver })),
      ...offcuts,
    ]),
  );
  const promised = piecesByKey(openPromises(orders, movements), sizedKey);
  const comes = piecesByKey(coming, sizedKey);
  return {
    onOrder: less(coming, (key) => promised.get(key) ?? 0),
    onHand: less(stockOnHand(movements), (key) =>
      Math.max(0, (promised.get(key) ?? 0) - (comes.get(key) ?? 0)),
    ),
    supplied: coversOf(received),
    orderedForJobs: coversOf(sent),
  };
}

const coversOf = (orders: readonly OrderRecord[]): readonly JobPieces[] =>
  orders.flatMap(({ covers }) => covers);

const less = (
  stock: readonly SizedPieces[],
  takenOf: (key: string) => number,
): readonly SizedPieces[] =>
  stock.flatMap((each) => {
    const left = Math.max(0, each.pieces - takenOf(sizedKey(each)));
    return left === 0 ? [] : [{ ...each, pieces: pieces(left) }];
  });
