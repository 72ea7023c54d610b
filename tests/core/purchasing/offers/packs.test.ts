import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { pieces } from "../../../../src/core/base/units";
import {
  coverWithPacks,
  packCount,
  type PackCover,
} from "../../../../src/core/purchasing/offers/packs";
import {
  breakFor,
  packSales,
  type PackSale,
} from "../../../../src/core/purchasing/offers/packSale";
import type { Offer } from "../../../../src/core/purchasing/offers/offers";
import { offerOf } from "../offerOf";

/** `2 x 100 + 1 x 50 = 25.00, 10 left`. */
const words = (cover: PackCover | null): string => {
  if (cover === null) return "nothing sold";
  const packs = cover.packs.map(({ offer, count }) => `${count} x ${offer.packSize}`).join(" + ");
  return `${packs === "" ? "none" : packs} = ${(cover.cost / 100).toFixed(2)}, ${cover.leftOver} left`;
};

const buy = (need: number, offers: readonly Offer[]): PackCover | null =>
  coverWithPacks(pieces(need), packSales(offers));

describe("buying packs", () => {
  const hundred = offerOf({ pack: 100, price: 1000 });
  const fifty = offerOf({ pack: 50, price: 600 });

  test.each([
    [0, "none = 0.00, 0 left"],
    [1, "1 x 50 = 6.00, 49 left"],
    [51, "1 x 100 = 10.00, 49 left"],
    [150, "1 x 100 + 1 x 50 = 16.00, 0 left"],
    [151, "2 x 100 = 20.00, 49 left"],
    [1_000_000, "10000 x 100 = 100000.00, 0 left"],
  ])("covers %i pieces in the cheapest packs", (need, expected) => {
    expect(words(buy(need, [hundred, fifty]))).toBe(expected);
  });

  test("takes fewer packs where the cost is the same", () => {
    const offers = [offerOf({ pack: 10, price: 100 }), offerOf({ pack: 20, price: 200 })];
    expect(words(buy(40, offers))).toBe("2 x 20 = 4.00, 0 left");
  });

  test("leaves less over where cost and packs are the same", () => {
    const offers = [offerOf({ pack: 30, price: 200 }), offerOf({ pack: 25, price: 200 })];
    expect(words(buy(25, offers))).toBe("1 x 25 = 2.00, 0 left");
  });

  test("takes the earlier offer where all is the same", () => {
    const offers = [
      offerOf({ supplier: "Birch", pack: 10, price: 100 }),
      offerOf({ supplier: "Alder", pack: 10, price: 100 }),
    ];
    expect(buy(35, offers)?.packs.map(({ offer }) => offer.supplier)).toEqual(["Birch"]);
  });

  test("buys nothing where nothing is sold", () => {
    expect(buy(5, [])).toBeNull();
  });

  test("buys no fewer packs than are sold at a time", () => {
    expect(words(buy(5, [offerOf({ pack: 10, price: 100, least: 3 })]))).toBe(
      "3 x 10 = 3.00, 25 left",
    );
  });

  test("starts at the first break where there is none from one pack", () => {
    expect(words(buy(5, [offerOf({ pack: 10, price: 100, from: 4 })]))).toBe(
      "4 x 10 = 4.00, 35 left",
    );
  });
});

describe("buying more to reach a lower price", () => {
  const offers = [offerOf({ pack: 10, price: 500 }), offerOf({ pack: 10, price: 400, from: 10 })];

  test("is done where it costs less, and says what it saves and leaves over", () => {
    const cover = buy(85, offers);
    expect(words(cover)).toBe("10 x 10 = 40.00, 15 left");
    expect(cover?.more).toEqual({ packs: 1, saves: 500 });
  });

  test("is not done where it costs more", () => {
    const cover = buy(75, offers);
    expect(words(cover)).toBe("8 x 10 = 40.00, 5 left");
    expect(cover?.more).toBeNull();
  });

  test("is not claimed for a pack that is only larger", () => {
    expect(buy(1, [offerOf({ pack: 100, price: 500 })])?.more).toBeNull();
  });

  test("gives every pack the price of the break", () => {
    expect(words(buy(100, offers))).toBe("10 x 10 = 40.00, 0 left");
    expect(words(buy(99, offers))).toBe("10 x 10 = 40.00, 1 left");
  });

  test("passes over a break that is no cheaper than one from fewer packs", () => {
    const rising = [offerOf({ pack: 10, price: 500 }), offerOf({ pack: 10, price: 600, from: 5 })];
    expect(words(buy(60, rising))).toBe("6 x 10 = 30.00, 0 left");
  });
});

describe("the cheapest cover", () => {
  const anyOffer = fc
    .record({
      supplier: fc.constantFrom("Alder", "Birch"),
      pack: fc.integer({ min: 1, max: 6 }),
      price: fc.integer({ min: 0, max: 12 }),
      from: fc.integer({ min: 1, max: 4 }),
      least: fc.constantFrom(1, 1, 1, 2, 3),
    })
    .map(offerOf);

  test("agrees with trying every count, ties and all, on 10,000 random cases", () => {
    fc.assert(
      fc.property(
        fc.array(anyOffer, { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 0, max: 32 }),
        (offers, need) => {
          const sales = packSales(offers).slice(0, 3);
          const cover = coverWithPacks(pieces(need), sales);
          expect(cover).not.toBeNull();
          if (cover !== null) expect(rank(cover, sales)).toEqual(bestByTrying(need, sales));
        },
      ),
      { numRuns: 10_000 },
    );
  });

  test("costs as little for a large need, most of which is settled beforehand", () => {
    fc.assert(
      fc.property(
        fc.array(anyOffer, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 130, max: 200 }),
        (offers, need) => {
          const sales = packSales(offers);
          const cover = coverWithPacks(pieces(need), sales);
          expect(cover).toMatchObject({ cost: leastCost(need, sales), exact: true });
        },
      ),
      { numRuns: 25 },
    );
  });

  test("says that it is not exact where the pack sizes have no common step", () => {
    const odd = [offerOf({ pack: 99_991, price: 900 }), offerOf({ pack: 99_989, price: 870 })];
    expect(buy(500_000_000, odd)).toMatchObject({ exact: false, cost: 5001 * 870 });
  });
});

/** Cost, packs, left over, then the counts of the sales with the earlier ones first. */
function rank(cover: PackCover, sales: readonly PackSale[]): readonly number[] {
  const counts = sales.map((sale) =>
    cover.packs
      .filter(({ offer }) => offer.supplier === sale.supplier && offer.packSize === sale.packSize)
      .reduce((sum, { count }) => sum + count, 0),
  );
  return [cover.cost, packCount(cover), cover.leftOver, ...counts];
}

function bestByTrying(need: number, sales: readonly PackSale[]): readonly number[] {
  let best: readonly number[] = [];
  const visit = (index: number, counts: readonly number[]): void => {
    const sale = sales[index];
    if (sale !== undefined) {
      const most = Math.max(Math.ceil(need / sale.packSize), sale.breaks.at(-1)?.from ?? 0);
      for (let count = 0; count <= most; count += 1) {
        if (count === 0 || breakFor(sale, count) !== null) visit(index + 1, [...counts, count]);
      }
      return;
    }
    const bought = counts.reduce((sum, count, at) => sum + count * (sales[at]?.packSize ?? 0), 0);
    if (bought < need) return;
    const cost = counts.reduce((sum, count, at) => {
      const each = sales[at];
      return (
        sum + (count === 0 || each === undefined ? 0 : count * (breakFor(each, count)?.price ?? 0))
      );
    }, 0);
    const packs = counts.reduce((sum, count) => sum + count, 0);
    const candidate = [cost, packs, bought - need, ...counts];
    if (best.length === 0 || isBefore(candidate, best)) best = candidate;
  };
  visit(0, []);
  return best;
}

/** The least cost by trying every count of each sale in turn for every rest of the need. */
function leastCost(need: number, sales: readonly PackSale[]): number {
  let later = Array.from({ length: need + 1 }, (_, rest) => (rest === 0 ? 0 : Infinity));
  for (const sale of sales) {
    const most = Math.max(Math.ceil(need / sale.packSize), sale.breaks.at(-1)?.from ?? 0);
    later = later.map((skip, rest) => {
      let least = skip;
      for (let count = sale.leastPacks; count <= most; count += 1) {
        const before = later[Math.max(0, rest - count * sale.packSize)] ?? Infinity;
        least = Math.min(least, before + count * (breakFor(sale, count)?.price ?? Infinity));
      }
      return least;
    });
  }
  return later[need] ?? Infinity;
}

/** Lower in the first three numbers, then higher in the counts. */
function isBefore(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((number, index) => number !== b[index]);
  if (at < 0) return false;
  return at < 3 ? (a[at] ?? 0) < (b[at] ?? 0) : (a[at] ?? 0) > (b[at] ?? 0);
}
