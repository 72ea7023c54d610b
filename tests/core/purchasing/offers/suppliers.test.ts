import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { cents, pieces } from "../../../../src/core/base/units";
import type { Offer } from "../../../../src/core/purchasing/offers/offers";
import {
  chooseSuppliers,
  type SupplierChoice,
} from "../../../../src/core/purchasing/offers/suppliers";
import type { Purchase, SupplierTerms } from "../../../../src/core/purchasing/orders/supplierPlan";
import { offerOf } from "../offerOf";

const purchase = (key: string, need: number, offers: readonly Offer[]): Purchase => ({
  key,
  need: pieces(need),
  offers,
});
const terms = (supplier: string, leastOrder: number, freight: number): SupplierTerms => ({
  supplier,
  leastOrder: cents(leastOrder),
  freight: cents(freight),
});
/** Who gets what order: `Alder 10.00 + 5.00`. */
const words = (choice: SupplierChoice): readonly string[] =>
  choice.charges.map(({ supplier, goods, madeUp, freight }) => {
    const more = madeUp + freight === 0 ? "" : ` + ${((madeUp + freight) / 100).toFixed(2)}`;
    return `${supplier} ${(goods / 100).toFixed(2)}${more}`;
  });

const nuts = purchase("nuts", 1, [
  offerOf({ supplier: "Alder", price: 1000 }),
  offerOf({ supplier: "Birch", price: 1200 }),
]);
const bolts = purchase("bolts", 1, [
  offerOf({ supplier: "Alder", price: 3000 }),
  offerOf({ supplier: "Birch", price: 2500 }),
]);

describe("two suppliers", () => {
  test("share the order by price where neither asks for more", () => {
    const choice = chooseSuppliers([nuts, bolts], []);
    expect(words(choice)).toEqual(["Alder 10.00", "Birch 25.00"]);
    expect(choice).toMatchObject({ total: 3500, proven: true, byPriceAlone: 3500 });
    expect(choice.fromOne).toEqual({ supplier: "Birch", total: 3700 });
  });

  test("become one where freight costs more than the split saves", () => {
    const choice = chooseSuppliers([nuts, bolts], [terms("Alder", 0, 300), terms("Birch", 0, 300)]);
    expect(words(choice)).toEqual(["Birch 37.00 + 3.00"]);
    expect(choice).toMatchObject({ total: 4000, proven: true, byPriceAlone: 4100 });
  });

  test("stay two where the split saves more than the freight", () => {
    const choice = chooseSuppliers([nuts, bolts], [terms("alder ", 0, 100)]);
    expect(words(choice)).toEqual(["Alder 10.00 + 1.00", "Birch 25.00"]);
  });

  test("become one where a least order would be paid for nothing", () => {
    const choice = chooseSuppliers([nuts, bolts], [terms("Alder", 2000, 0)]);
    expect(words(choice)).toEqual(["Birch 37.00"]);
    expect(choice.byPriceAlone).toBe(4500);
  });

  test("have something moved between them to reach a least order", () => {
    const washers = purchase("washers", 1, [
      offerOf({ supplier: "Alder", price: 1050 }),
      offerOf({ supplier: "Birch", price: 1000 }),
    ]);
    const only = purchase("only", 1, [offerOf({ supplier: "Alder", price: 500 })]);
    const rest = purchase("rest", 1, [offerOf({ supplier: "Birch", price: 9000 })]);
    const choice = chooseSuppliers([only, washers, rest], [terms("Alder", 1500, 0)]);
    expect(words(choice)).toEqual(["Alder 15.50", "Birch 90.00"]);
    expect(choice.total).toBe(10_550);
    expect(choice.covers.map(({ packs }) => packs[0]?.offer.supplier)).toEqual([
      "Alder",
      "Alder",
      "Birch",
    ]);
  });

  test("are charged a least order that cannot be reached", () => {
    const only = purchase("only", 1, [offerOf({ supplier: "Alder", price: 500 })]);
    const choice = chooseSuppliers([only], [terms("Alder", 1500, 200)]);
    expect(words(choice)).toEqual(["Alder 5.00 + 12.00"]);
    expect(choice).toMatchObject({ total: 1700, proven: true });
  });
});

test("nothing to buy costs nothing", () => {
  expect(chooseSuppliers([], [terms("Alder", 1500, 200)])).toMatchObject({
    total: 0,
    proven: true,
    charges: [],
    fromOne: null,
  });
});

test("a purchase that nobody sells is a programmer's fault", () => {
  expect(() => chooseSuppliers([purchase("x", 1, [])], [])).toThrow(RangeError);
});

describe("whatever the prices", () => {
  const anyPurchase = fc
    .record({
      need: fc.integer({ min: 1, max: 4 }),
      offers: fc.array(
        fc
          .record({
            supplier: fc.constantFrom("Alder", "Birch", "Cedar"),
            pack: fc.integer({ min: 1, max: 3 }),
            price: fc.integer({ min: 1, max: 30 }),
          })
          .map(offerOf),
        { minLength: 1, maxLength: 3 },
      ),
    })
    .map(({ need, offers }) => purchase("", need, offers));
  const anyTerms = fc
    .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 20 }))
    .chain(([least, freight]) =>
      fc
        .constantFrom("Alder", "Birch", "Cedar")
        .map((supplier) => terms(supplier, Math.max(0, least - 30), freight)),
    );

  test("no way to buy costs less than the bound, and with freight alone the choice is the best", () => {
    fc.assert(
      fc.property(
        fc.array(anyPurchase, { minLength: 1, maxLength: 2 }),
        fc.array(anyTerms, { maxLength: 3 }),
        fc.boolean(),
        (purchases, all, freightOnly) => {
          const asked = freightOnly ? all.map((each) => ({ ...each, leastOrder: cents(0) })) : all;
          const choice = chooseSuppliers(purchases, asked);
          const least = leastTotal(purchases, asked);
          expect(choice.lowerBound).toBeLessThanOrEqual(least);
          expect(choice.total).toBeGreaterThanOrEqual(least);
          expect(choice.total).toBeLessThanOrEqual(choice.byPriceAlone);
          expect(choice.total).toBeLessThanOrEqual(choice.fromOne?.total ?? Infinity);
          if (freightOnly) expect(choice.proven).toBe(true);
          expect(choice.covers).toHaveLength(purchases.length);
          const goods = choice.covers.reduce((sum, cover) => sum + cover.cost, 0);
          expect(choice.charges.reduce((sum, charge) => sum + charge.goods, 0)).toBe(goods);
        },
      ),
      { numRuns: 300 },
    );
  });

  test("eleven suppliers, one at a time left out, cost no more than by price alone", () => {
    const names = Array.from({ length: 11 }, (_, index) => `Supplier ${index + 1}`);
    const purchases = names.map((_, at) =>
      purchase(
        `item ${at}`,
        10,
        names.map((supplier, index) => offerOf({ supplier, price: 1000 - ((index + at) % 11) })),
      ),
    );
    const asked = names.map((supplier) => terms(supplier, 0, 500));
    const choice = chooseSuppliers(purchases, asked);
    expect(choice.charges).toHaveLength(1);
    expect(choice.lowerBound).toBeLessThanOrEqual(choice.total);
    expect(choice.total).toBeLessThan(choice.byPriceAlone);
  });
});

/** The least total over every count of every offer. */
function leastTotal(purchases: readonly Purchase[], all: readonly SupplierTerms[]): number {
  let least = Infinity;
  const visit = (at: number, goods: ReadonlyMap<string, number>): void => {
    const next = purchases[at];
    if (next === undefined) {
      let total = 0;
      for (const [supplier, cost] of goods) {
        const asked = all.find((each) => each.supplier === supplier);
        total += Math.max(cost, asked?.leastOrder ?? 0) + (asked?.freight ?? 0);
      }
      least = Math.min(least, total);
      return;
    }
    const count = (index: number, got: number, so: ReadonlyMap<string, number>): void => {
      const offer = next.offers[index];
      if (offer === undefined) {
        if (got >= next.need) visit(at + 1, so);
        return;
      }
      for (let packs = 0; packs <= next.need; packs += 1) {
        const cost = (so.get(offer.supplier) ?? 0) + packs * offer.price;
        const more = packs === 0 ? so : new Map(so).set(offer.supplier, cost);
        count(index + 1, got + packs * offer.packSize, more);
      }
    };
    count(0, 0, goods);
  };
  visit(0, new Map());
  return least;
}
