/** What the firm's books say is there: what is free, and what the jobs have. */
import { pieces } from "../base/units";
import type { Standing } from "./orderInput";
import type { OrderRecord } from "./orderRecord";
import { openPromises } from "./promises";
import { sizedKey } from "./sizedItem";
import { addUp, piecesByKey, type JobPieces, type SizedPieces } from "./sizedPieces";
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
 * What is free and what the jobs have. Drafts count for nothing. What a sent order brings for stock
 * is free on order until it is received, less what is promised of it; what has come and is promised
 * is not free on the shelf either.
 */
export function standingOf({ orders, movements, elsewhere }: OrderBooks): Standing {
  const sent = orders.filter(({ state }) => state === "sent");
  const received = orders.filter(({ state }) => state === "received");
  const coming = addUp([
    ...elsewhere,
    ...sent.flatMap(({ packs, offcuts }) => [
      ...packs.map(({ item, size, leftOver }) => ({ item, size, pieces: leftOver })),
      ...offcuts,
    ]),
  ]);
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
