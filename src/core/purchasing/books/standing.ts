/** What the firm's books say is there: what is free, and what the jobs have. */
import { pieces } from "../../base/units";
import type { Standing } from "../orders/orderInput";
import type { OrderRecord } from "./orderRecord";
import { groupBy } from "../../base/groupBy";
import { progressOf, type OrderProgress } from "./orderProgress";
import { openPromises } from "./promises";
import { sizedKey } from "../sizedItem";
import { addUp, piecesByKey, type SizedPieces } from "../sizedPieces";
import { stockOnHand, type StockMovement } from "./stockMovements";

/** Orders and the movements of stock, which change together (`orderBooks.ts`). */
export type OrderBooks = {
  /** In the order in which they were made. */
  readonly orders: readonly OrderRecord[];
  readonly movements: readonly StockMovement[];
  /** Numbers of drafts that were removed; no other order gets them. */
  readonly removed: readonly string[];
  /** On order for stock by other means, as a person says; orders may be promised of it. */
  readonly elsewhere: readonly SizedPieces[];
};

export const noBooks: OrderBooks = {
  orders: [],
  movements: [],
  removed: [],
  elsewhere: [],
};

/** The orders that are sent or received. */
export const sentOrders = ({ orders }: OrderBooks): readonly OrderRecord[] =>
  orders.filter(({ state }) => state !== "draft");

/**
 * What is free and what the jobs have. Drafts count for nothing. What a sent order still brings for
 * stock is free on order, less what is promised of it; what has come and is promised is not free on
 * the shelf either. What was closed short counts for nothing.
 */
export function standingOf(books: OrderBooks): Standing {
  const { orders, movements } = books;
  const progress = progressOfAll(books);
  const coming = comingForStock(books);
  const promised = piecesByKey(openPromises(orders, movements), sizedKey);
  const comes = piecesByKey(coming, sizedKey);
  return {
    onOrder: less(coming, (key) => promised.get(key) ?? 0),
    onHand: less(stockOnHand(movements), (key) =>
      Math.max(0, (promised.get(key) ?? 0) - (comes.get(key) ?? 0)),
    ),
    supplied: progress.flatMap(({ given }) => given),
    orderedForJobs: progress.flatMap(({ toGive }) => toGive),
  };
}

/** What sent orders, and other means, still bring for stock, promised or not. */
export const comingForStock = (books: OrderBooks): readonly SizedPieces[] =>
  addUp([...books.elsewhere, ...progressOfAll(books).flatMap(({ toStock }) => toStock)]);

function progressOfAll(books: OrderBooks): readonly OrderProgress[] {
  const owed = groupBy(openPromises(books.orders, books.movements), ({ order }) => order);
  return sentOrders(books).map((order) => progressOf(order, owed.get(order.number)));
}

const less = (
  stock: readonly SizedPieces[],
  takenOf: (key: string) => number,
): readonly SizedPieces[] =>
  stock.flatMap((each) => {
    const left = Math.max(0, each.pieces - takenOf(sizedKey(each)));
    return left === 0 ? [] : [{ ...each, pieces: pieces(left) }];
  });
