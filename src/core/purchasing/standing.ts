/** What is there already, by the firm's records: stock movements and earlier orders. */
import { pieces } from "../base/units";
import { addUp } from "./leftOver";
import type { JobPieces, SizedPieces, Standing } from "./orderInput";
import type { OrderRecord } from "./orderRecord";
import { sizedKey } from "./sizedItem";
import { stockOnHand, type StockMovement } from "./stockMovements";

/**
 * What is free and what the jobs have. Drafts count for nothing. What a sent order brings for stock
 * is free on order until it is received; what another sent order has been promised of that is not,
 * and once it has come, not free on the shelf either.
 */
export function standingOf(
  orders: readonly OrderRecord[],
  movements: readonly StockMovement[],
): Standing {
  const sent = orders.filter(({ state }) => state === "sent");
  const received = orders.filter(({ state }) => state === "received");
  const coming = addUp(
    sent.flatMap(({ packs, offcuts }) => [
      ...packs.map(({ item, size, leftOver }) => ({ item, size, pieces: leftOver })),
      ...offcuts,
    ]),
  );
  const promised = piecesByKey(sent.flatMap(({ fromOrders }) => fromOrders));
  const comingByKey = piecesByKey(coming);
  return {
    onOrder: less(coming, (key) => promised.get(key) ?? 0),
    onHand: less(stockOnHand(movements), (key) =>
      Math.max(0, (promised.get(key) ?? 0) - (comingByKey.get(key) ?? 0)),
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

function piecesByKey(all: readonly SizedPieces[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const each of all) {
    counts.set(sizedKey(each), (counts.get(sizedKey(each)) ?? 0) + each.pieces);
  }
  return counts;
}
