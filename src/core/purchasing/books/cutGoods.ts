/** What is made of the bars of an order that have come, or that will. */
import { pieces } from "../../base/units";
import { groupBy } from "../../base/groupBy";
import type { OrderRecord } from "./orderRecord";
import { itemKey, sizedKey, type SizedItem } from "../sizedItem";
import { jobKeyOf, lessPieces, type JobPieces, type SizedPieces } from "../sizedPieces";

export type CutGoods = {
  /** What is cut; where that is not on record, one of the bars. */
  readonly bar: SizedItem;
  readonly gives: readonly JobPieces[];
  readonly offcuts: readonly SizedPieces[];
};

/** `bars`: how many there are of each, by key, for cutting. They are cut in the order of the cut list. */
export function cutGoods(
  order: OrderRecord,
  bars: ReadonlyMap<string, number>,
): readonly CutGoods[] {
  if (order.cuts === null) return unrecordedGoods(order, bars);
  const left = new Map(bars);
  return order.cuts.flatMap((cut): readonly CutGoods[] => {
    if (!cut.isBought) return [];
    const key = sizedKey(cut.bar);
    const made = Math.min(cut.bars, left.get(key) ?? 0);
    left.set(key, (left.get(key) ?? 0) - made);
    return made === 0
      ? []
      : [{ bar: cut.bar, gives: times(cut.gives, made), offcuts: times(cut.offcuts, made) }];
  });
}

export const times = <Counted extends SizedPieces>(
  all: readonly Counted[],
  count: number,
): readonly Counted[] => all.map((each) => ({ ...each, pieces: pieces(each.pieces * count) }));

/**
 * Of an order kept before cuts were on record: of every length that is cut the part that the bars are
 * of all bars, rounded down, so that rather a piece too many is ordered again than one too few.
 */
function unrecordedGoods(
  order: OrderRecord,
  bars: ReadonlyMap<string, number>,
): readonly CutGoods[] {
  const lines = order.packs.filter((packs) => bars.has(sizedKey(packs)));
  const taken = [...order.fromShelf, ...order.fromOrders].flatMap(({ job, ...each }) =>
    job === null ? [] : [{ ...each, job }],
  );
  const covers = lessPieces(order.covers, taken, (each) => jobKeyOf(each.job, each));
  return [...groupBy(lines, itemKey)].flatMap(([item, ofItem]): readonly CutGoods[] => {
    const [bar] = ofItem;
    const all = ofItem.reduce(
      (sum, { count, packSize, leftOver, size }) =>
        sum + (count * packSize - leftOver) * (size[0] ?? 1),
      0,
    );
    const there = [...groupBy(ofItem, sizedKey)].reduce(
      (sum, [key, [line]]) => sum + (bars.get(key) ?? 0) * (line?.size[0] ?? 1),
      0,
    );
    if (bar === undefined || all === 0) return [];
    const part = <Counted extends SizedPieces>(list: readonly Counted[]): readonly Counted[] =>
      list.flatMap((each) => {
        const count = there >= all ? each.pieces : Math.floor((each.pieces * there) / all);
        return itemKey(each) === item && count > 0 ? [{ ...each, pieces: pieces(count) }] : [];
      });
    return [{ bar, gives: part(covers), offcuts: part(order.offcuts) }];
  });
}
