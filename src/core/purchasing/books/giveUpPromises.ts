/** Promises that nothing can keep any more since an order was closed short. */
import { pieces } from "../../base/units";
import { groupBy } from "../../base/groupBy";
import { openPromises } from "./promises";
import { sizedKey } from "../sizedItem";
import { piecesByKey } from "../sizedPieces";
import { comingForStock, type OrderBooks } from "./standing";
import { stockOnHand } from "./stockMovements";

/** The latest order gives up first, and only what shelf and what is still to come cannot give. */
export function giveUpPromises(books: OrderBooks): OrderBooks {
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
  if (gone.length === 0) return books;
  let { orders } = books;
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
    orders = orders.with(at, { ...order, givenUp: [...order.givenUp, ...given] });
  }
  // An order that does not get a bar leaves no offcut of it to those that counted on that.
  return giveUpPromises({ ...books, orders });
}
