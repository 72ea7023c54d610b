/** Promises that nothing can keep any more since an order was closed short. */
import { pieces } from "../base/units";
import { groupBy } from "./groupBy";
import { offcutsLost } from "./orderProgress";
import type { OrderRecord, TakenPieces } from "./orderRecord";
import { openPromises } from "./promises";
import type { Receipt } from "./receipt";
import { sizedKey } from "./sizedItem";
import { piecesByKey } from "./sizedPieces";
import { comingForStock, type OrderBooks } from "./standing";
import { addMovements, stockOnHand, type StockChange } from "./stockMovements";

/** The latest order gives up first, and only what shelf and what is still to come cannot give. */
export function giveUpPromises(books: OrderBooks, { day, who }: Receipt): OrderBooks {
  const promises = openPromises(books.orders, books.movements);
  const missing = piecesByKey(promises, sizedKey);
  const there = [...stockOnHand(books.movements), ...comingForStock(books)];
  for (const [key, count] of piecesByKey(there, sizedKey)) {
    missing.set(key, (missing.get(key) ?? 0) - count);
  }
  const gone = promises.toReversed().flatMap((promise) => {
    const key = sizedKey(promise);
    const count = Math.min(promise.pieces, Math.max(0, missing.get(key) ?? 0));
    missing.set(key, (missing.get(key) ?? 0) - count);
    return count === 0 ? [] : [{ ...promise, pieces: pieces(count) }];
  });
  let { orders, movements } = books;
  for (const [number, ofOrder] of groupBy(gone, ({ order }) => order)) {
    const at = orders.findIndex((each) => each.number === number);
    const order = orders[at];
    if (order === undefined) continue;
    const given = ofOrder.map(({ item, size, pieces: count, job }) => ({
      item,
      size,
      pieces: count,
      job,
    }));
    if (order.state === "received") {
      movements = addMovements(movements, notCut(order, given, movements, day, who));
    }
    orders = orders.with(at, { ...order, givenUp: [...order.givenUp, ...given] });
  }
  return { ...books, orders, movements };
}

/** Offcuts of bars that do not come, put on the shelf when the order was received: off it again. */
function notCut(
  order: OrderRecord,
  gone: readonly TakenPieces[],
  movements: OrderBooks["movements"],
  day: number,
  who: string,
): readonly StockChange[] {
  const there = piecesByKey(stockOnHand(movements), sizedKey);
  return offcutsLost(order, gone).map(({ item, size, pieces: count }) => ({
    item,
    size,
    kind: "reversed",
    change: 0 - Math.min(count, there.get(sizedKey({ item, size })) ?? 0),
    day,
    job: null,
    order: order.number,
    who,
    note: "its bar did not come",
  }));
}
