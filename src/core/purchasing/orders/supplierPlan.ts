/** Who gets an order, for what, and what each supplier adds to it. */
import { cents, pieces, type Cents, type Pieces } from "../../base/units";
import { supplierKey, type Offer } from "../offers/offers";
import { coverWithPacks, packCount, type PackCover } from "../offers/packs";
import { packSales } from "../offers/packSale";

/** What a supplier asks of an order as a whole. */
export type SupplierTerms = {
  readonly supplier: string;
  /** An order for less is charged as if it came to this. Zero for none. */
  readonly leastOrder: Cents;
  /** For each order, whatever is in it. */
  readonly freight: Cents;
};

/** So many pieces of one thing to buy, and who sells it. */
export type Purchase = {
  readonly key: string;
  readonly need: Pieces;
  /** At least one. */
  readonly offers: readonly Offer[];
};

/** One supplier's order. */
export type SupplierCharge = {
  readonly supplier: string;
  readonly goods: Cents;
  /** What the goods fall short of the least order. */
  readonly madeUp: Cents;
  readonly freight: Cents;
};

export type SupplierPlan = {
  /** In the order of the purchases. */
  readonly covers: readonly PackCover[];
  /** In the order of the suppliers; those with an order only. */
  readonly charges: readonly SupplierCharge[];
  /** Goods, and what suppliers add. */
  readonly total: Cents;
};

/** What the search works on: suppliers by number, and covers worked out once. */
export type SupplierModel = {
  readonly suppliers: readonly string[];
  /** Each supplier's bit in a group. Those from the thirtieth on have one bit together. */
  readonly bits: readonly number[];
  readonly terms: readonly SupplierTerms[];
  /**
   * The cheapest cover of a purchase from the suppliers in `group`, a bit for each; `null` where
   * none of them sells it.
   */
  readonly coverFrom: (purchase: number, group: number) => PackCover | null;
  /** The suppliers that sell a purchase, a bit for each. */
  readonly sellers: readonly number[];
  readonly purchases: readonly Purchase[];
};

/** A group is a whole number with so many bits. */
const mostBits = 30;

/** Suppliers are in the order of their first offer. Terms of a supplier who sells nothing are left out. */
export function supplierModel(
  purchases: readonly Purchase[],
  terms: readonly SupplierTerms[],
): SupplierModel {
  const suppliers = [
    ...new Set(purchases.flatMap(({ offers }) => offers.map((offer) => offer.supplier))),
  ];
  const bits = suppliers.map((_, index) => 1 << Math.min(index, mostBits - 1));
  const bitOf = (supplier: string): number => bits[suppliers.indexOf(supplier)] ?? 0;
  const sellers = purchases.map(({ offers }) =>
    offers.reduce((group, offer) => group | bitOf(offer.supplier), 0),
  );
  const known = new Map<string, PackCover | null>();
  return {
    suppliers,
    bits,
    purchases,
    sellers,
    terms: suppliers.map(
      (supplier) =>
        terms.find((each) => supplierKey(each.supplier) === supplierKey(supplier)) ?? {
          supplier,
          leastOrder: cents(0),
          freight: cents(0),
        },
    ),
    coverFrom: (index, group) => {
      const selling = group & (sellers[index] ?? 0);
      const key = `${index} ${selling}`;
      const before = known.get(key);
      if (before !== undefined) return before;
      const purchase = purchases[index];
      const offers =
        purchase?.offers.filter((offer) => (bitOf(offer.supplier) & selling) !== 0) ?? [];
      const cover = coverWithPacks(purchase?.need ?? pieces(0), packSales(offers));
      known.set(key, cover);
      return cover;
    },
  };
}

/** Each purchase at its cheapest from the group; `null` where the group does not sell all. */
export function cheapestFrom(model: SupplierModel, group: number): readonly PackCover[] | null {
  const covers = model.purchases.flatMap((_, index) => model.coverFrom(index, group) ?? []);
  return covers.length === model.purchases.length ? covers : null;
}

/** The plan that the covers make, with what each supplier adds. */
export function planOf(model: SupplierModel, covers: readonly PackCover[]): SupplierPlan {
  const charges = model.terms.flatMap((terms, index) => {
    const supplier = model.suppliers[index] ?? terms.supplier;
    const packs = covers.flatMap((cover) =>
      cover.packs.filter(({ offer }) => offer.supplier === supplier),
    );
    if (packs.length === 0) return [];
    const goods = cents(packs.reduce((sum, { cost }) => sum + cost, 0));
    const madeUp = cents(Math.max(0, terms.leastOrder - goods));
    return [{ supplier, goods, madeUp, freight: terms.freight }];
  });
  const total = charges.reduce(
    (sum, { goods, madeUp, freight }) => sum + goods + madeUp + freight,
    0,
  );
  return { covers, charges, total: cents(total) };
}

/** Less money, then fewer suppliers, then fewer packs. */
export function isBetterPlan(a: SupplierPlan, b: SupplierPlan): boolean {
  const packs = (plan: SupplierPlan): number =>
    plan.covers.reduce((sum, cover) => sum + packCount(cover), 0);
  if (a.total !== b.total) return a.total < b.total;
  if (a.charges.length !== b.charges.length) return a.charges.length < b.charges.length;
  return packs(a) < packs(b);
}
