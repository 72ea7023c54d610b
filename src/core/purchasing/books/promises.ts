/**
 * Pieces that an order was promised from what others bring for stock. They are taken off the shelf
 * as soon as they are there, whichever order comes first.
 */
import { pieces } from "../../base/units";
import type { OrderRecord, TakenPieces } from "./orderRecord";
import { sizedKey } from "../sizedItem";
import type { StockMovement } from "./stockMovements";

export type OpenPromise = TakenPieces & { readonly order: string };

/**
 * What sent and received orders are still owed: all that they take, less the rows that took it and
 * what they have given up.
 */
export function openPromises(
  orders: readonly OrderRecord[],
  movements: readonly StockMovement[],
): readonly OpenPromise[] {
  const taken = new Map<string, number>();
  for (const row of movements) {
    if (row.kind !== "taken" || row.order === null) continue;
    const key = keyOf(row.order, row);
    taken.set(key, (taken.get(key) ?? 0) - row.change);
  }
  return orders
    .filter(({ state }) => state !== "draft")
    .flatMap(({ number, fromShelf, fromOrders, givenUp }) => {
      for (const each of givenUp) {
        const key = keyOf(number, each);
        taken.set(key, (taken.get(key) ?? 0) + each.pieces);
      }
      return [...fromShelf, ...fromOrders].flatMap((each) => {
        const key = keyOf(number, each);
        const had = Math.min(each.pieces, taken.get(key) ?? 0);
        taken.set(key, (taken.get(key) ?? 0) - had);
        return had === each.pieces
          ? []
          : [{ ...each, pieces: pieces(each.pieces - had), order: number }];
      });
    });
}

const keyOf = (order: string, taken: Pick<TakenPieces, "item" | "size" | "job">): string =>
  JSON.stringify([order, taken.job, sizedKey(taken)]);
