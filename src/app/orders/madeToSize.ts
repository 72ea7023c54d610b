/** Offers without a size, for things that are made or cut to the size that is asked for. */
import { cents } from "../../core/base/units";
import { unitsPerPiece, type ItemUnit } from "../../core/pricing/itemUnit";
import type { Demand } from "../../core/purchasing/orders/orderInput";
import type { Offer } from "../../core/purchasing/offers/offers";
import { isSameItem, sizedKey } from "../../core/purchasing/sizedItem";

/**
 * The offers with, for each size that is needed, those that name none: at their price per pack where
 * the item goes by the piece, else at their price per foot, square foot … times what the piece has of
 * it. By length and area they hold for packs of one only. What is cut from bars is bought in bars.
 */
export function madeToSize(
  offers: readonly Offer[],
  demands: readonly Demand[],
  unitOf: (item: string) => ItemUnit | null,
): readonly Offer[] {
  const sizes = new Map(
    demands
      .filter(({ isCut, size }) => !isCut && size.length > 0)
      .map((each) => [sizedKey(each), each]),
  );
  const made = [...sizes.values()].flatMap(({ item, size }) => {
    const unit = unitOf(item);
    const units = unit === null ? null : unitsPerPiece(unit, size);
    if (unit === null || units === null) return [];
    return offers
      .filter((offer) => offer.size.length === 0 && isSameItem(offer, { item }))
      .filter(({ packSize }) => unit.by === "piece" || packSize === 1)
      .map((offer): Offer => ({ ...offer, size, price: cents(Math.round(offer.price * units)) }));
  });
  return [...offers, ...made];
}
