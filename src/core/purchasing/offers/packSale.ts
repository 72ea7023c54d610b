/** A pack as one supplier sells it: one size, and a price that depends on how many packs are bought. */
import type { Cents } from "../../base/units";
import { groupBy } from "../../base/groupBy";
import type { Offer } from "./offers";

/** The price of every pack once so many are bought (all-units). */
export type PriceBreak = { readonly from: number; readonly price: Cents; readonly offer: Offer };

export type PackSale = {
  readonly supplier: string;
  readonly packSize: number;
  /** Fewer packs than this are not sold. One or more. */
  readonly leastPacks: number;
  /** From few packs to many, each cheaper than the one before; the first holds from `leastPacks`. */
  readonly breaks: readonly [PriceBreak, ...PriceBreak[]];
};

/**
 * The sales that offers for one item make, in the order of their first offer: those of one supplier
 * and pack size are one sale. Its least count is the largest that any of its offers asks for. A
 * break that is no cheaper than one from fewer packs is passed over; `checkOffers` has warned.
 */
export function packSales(offers: readonly Offer[]): readonly PackSale[] {
  const groups = groupBy(offers, (offer) => `${offer.packSize} ${offer.supplier}`);
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const asked = group.reduce((most, offer) => Math.max(most, offer.leastPacks), 1);
    const starts = group.reduce((least, offer) => Math.min(least, offer.fromPacks), Infinity);
    const leastPacks = Math.max(asked, starts);
    const [cheapest, ...breaks] = breaksOf(group, leastPacks);
    if (cheapest === undefined) return [];
    const { supplier, packSize } = first;
    return [{ supplier, packSize, leastPacks, breaks: [cheapest, ...breaks] as const }];
  });
}

function breaksOf(offers: readonly Offer[], leastPacks: number): readonly PriceBreak[] {
  const breaks: PriceBreak[] = [];
  const rising = offers.toSorted((a, b) => a.fromPacks - b.fromPacks || a.price - b.price);
  for (const offer of rising) {
    const from = Math.max(offer.fromPacks, leastPacks);
    const before = breaks.at(-1);
    if (before !== undefined && before.price <= offer.price) continue;
    if (before?.from === from) breaks.pop();
    breaks.push({ from, price: offer.price, offer });
  }
  return breaks;
}

/** The break that so many packs reach; `null` below the least count. */
export const breakFor = (sale: PackSale, count: number): PriceBreak | null =>
  sale.breaks.findLast(({ from }) => count >= from) ?? null;
