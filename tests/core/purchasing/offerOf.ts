/** An offer in a few words, for tests and benches. All suppliers and prices are invented. */
import { cents, inches, pieces } from "../../../src/core/base/units";
import type { Offer } from "../../../src/core/purchasing/offers/offers";

type OfferParts = {
  readonly item?: string;
  readonly size?: readonly number[];
  readonly supplier?: string;
  readonly pack?: number;
  readonly price: number;
  readonly from?: number;
  readonly least?: number;
  readonly lead?: number;
};

export const offerOf = (parts: OfferParts): Offer => ({
  item: parts.item ?? "HN 1/4",
  size: (parts.size ?? []).map(inches),
  supplier: parts.supplier ?? "Alder",
  packSize: pieces(parts.pack ?? 1),
  price: cents(parts.price),
  fromPacks: parts.from ?? 1,
  leastPacks: parts.least ?? 1,
  leadDays: parts.lead ?? 0,
  priceDate: null,
  place: null,
});
