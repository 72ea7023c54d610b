/** Phase two of an order: what is cut, from which bars, and the bars that this leaves to buy. */
import { cents, pieces, type Pieces } from "../base/units";
import { cutLengthOf, inchesOf, type CutLength } from "./cutting/cutLength";
import type { BarsOnHand, CutPieces, CutPlan, CutProblem, SawRules } from "./cutting/cutProblem";
import type { Offer } from "./offers/offers";
import type { SizedPieces } from "./sizedPieces";
import { coverWithPacks } from "./offers/packs";
import { packSales } from "./offers/packSale";
import { isSameItem, sizeLength, type SizedItem } from "./sizedItem";

/** Offers by the length of their bar. */
export type BarOffers = ReadonlyMap<CutLength, readonly Offer[]>;

/** The offers for bars of the item. */
export function barOffers(item: string, offers: readonly Offer[]): BarOffers {
  const byLength = new Map<CutLength, readonly Offer[]>();
  for (const offer of offers) {
    const length = barLength(item, offer);
    if (length !== null) byLength.set(length, [...(byLength.get(length) ?? []), offer]);
  }
  return byLength;
}

/** Bars of the item among what is on the shelf or on order. */
export const barsAmong = (item: string, stock: readonly SizedPieces[]): readonly BarsOnHand[] =>
  stock.flatMap((each) => {
    const length = barLength(item, each);
    return length === null ? [] : [{ length, count: each.pieces }];
  });

function barLength(item: string, sized: SizedItem): CutLength | null {
  const [size, ...others] = sized.size;
  const isBar = size !== undefined && others.length === 0 && isSameItem({ item }, sized);
  return !isBar ? null : cutLengthOf(size, "down");
}

/** The size of a bar or offcut of that length. */
export const sizeOfBar = (length: CutLength): SizedItem["size"] => [sizeLength(inchesOf(length))];

/**
 * The cut problem of one item. A bar is priced at what it would come to if everything were cut from
 * its length, so that packs and price breaks tell; with one bar to a pack and no breaks that is its
 * price. What the bars then cost is worked out anew, in packs.
 */
export function cutProblemOf(
  item: string,
  cut: readonly CutPieces[],
  offers: BarOffers,
  onHand: readonly BarsOnHand[],
  saw: SawRules,
): CutProblem {
  const total = cut.reduce((sum, piece) => sum + (piece.length + saw.kerf) * piece.count, 0);
  const stock = [...offers].flatMap(([length, selling]) => {
    const usable = Math.max(1, length - saw.endTrim + saw.kerf);
    const likely = pieces(Math.max(1, Math.ceil(total / usable)));
    const cover = coverWithPacks(likely, packSales(selling));
    if (cover === null) return [];
    return [{ length, price: cents(Math.round(cover.cost / (likely + cover.leftOver))) }];
  });
  return { item, pieces: cut, stock, onHand, saw };
}

/** New bars of one length that the plan cuts. */
export type BarNeed = { readonly length: CutLength; readonly bars: Pieces };

/** By length, shortest first. */
export function barsToBuy(plan: CutPlan): readonly BarNeed[] {
  const counts = new Map<CutLength, number>();
  for (const bar of plan.bars) {
    if (bar.from === "stock") counts.set(bar.length, (counts.get(bar.length) ?? 0) + 1);
  }
  return [...counts]
    .sort(([a], [b]) => a - b)
    .map(([length, bars]) => ({ length, bars: pieces(bars) }));
}
