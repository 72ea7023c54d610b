/**
 * Buying in packs: the cheapest way to cover a need of loose pieces, or of bars, with whole packs
 * of one or several suppliers.
 *
 * Prices are all-units: once a count reaches a break, every pack has the break's price, so more
 * packs may cost less than fewer. Ties are settled by fewest packs, then least left over, then the
 * earlier offer.
 */
import { cents, pieces, type Cents, type Pieces } from "../../base/units";
import type { Offer } from "./offers";
import { breakFor, type PackSale } from "./packSale";
import { cheapestCounts } from "./packTable";

/** Packs of one sale at one price. */
export type BoughtPacks = {
  /** The offer whose price the count reaches. */
  readonly offer: Offer;
  readonly count: number;
  readonly cost: Cents;
};

/** What was gained by buying packs that the need alone does not ask for. */
export type BoughtMore = {
  /** More packs than the cheapest cover with none to spare has; zero or below where packs are larger. */
  readonly packs: number;
  /** What that cover would have cost more. */
  readonly saves: Cents;
};

export type PackCover = {
  readonly packs: readonly BoughtPacks[];
  readonly cost: Cents;
  readonly leftOver: Pieces;
  /** `null` where every pack is needed. */
  readonly more: BoughtMore | null;
  /** Whether no cover costs less. False only where pack sizes are so odd that the table would be too long. */
  readonly exact: boolean;
};

/** The cheapest cover; `null` where nothing is sold. A need of zero buys nothing. */
export function coverWithPacks(need: Pieces, sales: readonly PackSale[]): PackCover | null {
  const counts = cheapestCounts(need, sales, Infinity);
  if (counts === null) return null;
  if (counts === "too long") return cheapestSingle(need, sales);
  const cover = coverOf(need, sales, counts, true);
  const isNeedless = cover.packs.some(({ offer }) => offer.packSize <= cover.leftOver);
  return isNeedless ? { ...cover, more: boughtMore(need, sales, cover) } : cover;
}

/** Against the cheapest cover in which no pack could be left away. `null` where there is none dearer. */
function boughtMore(need: Pieces, sales: readonly PackSale[], cover: PackCover): BoughtMore | null {
  const sizes = [...new Set(sales.map((sale) => sale.packSize))];
  const lean = sizes.flatMap((smallest) => {
    const large = sales.filter((sale) => sale.packSize >= smallest);
    const counts = cheapestCounts(need, large, smallest - 1);
    return counts === null || counts === "too long" ? [] : [coverOf(need, large, counts, true)];
  });
  const [first, ...others] = lean;
  if (first === undefined) return null;
  const best = others.reduce((low, next) => (next.cost < low.cost ? next : low), first);
  const saves = cents(best.cost - cover.cost);
  return saves <= 0 ? null : { packs: packCount(cover) - packCount(best), saves };
}

/** The best cover with packs of one sale only. */
function cheapestSingle(need: Pieces, sales: readonly PackSale[]): PackCover | null {
  const covers = sales.flatMap((sale, index) => {
    const enough = Math.max(Math.ceil(need / sale.packSize), sale.leastPacks);
    return [enough, ...sale.breaks.map(({ from }) => from)]
      .filter((count) => count >= enough)
      .map((count) =>
        coverOf(
          need,
          sales,
          sales.map((_, at) => (at === index ? count : 0)),
          false,
        ),
      );
  });
  const [first, ...others] = covers;
  if (first === undefined) return null;
  return others.reduce((best, next) => (isCheaper(next, best) ? next : best), first);
}

const isCheaper = (a: PackCover, b: PackCover): boolean =>
  a.cost < b.cost ||
  (a.cost === b.cost &&
    (packCount(a) < packCount(b) || (packCount(a) === packCount(b) && a.leftOver < b.leftOver)));

export const packCount = (cover: PackCover): number =>
  cover.packs.reduce((sum, { count }) => sum + count, 0);

function coverOf(
  need: Pieces,
  sales: readonly PackSale[],
  counts: readonly number[],
  exact: boolean,
): PackCover {
  const packs = sales.flatMap((sale, index) => {
    const count = counts[index] ?? 0;
    const reached = breakFor(sale, count);
    return count === 0 || reached === null
      ? []
      : [{ offer: reached.offer, count, cost: cents(count * reached.price) }];
  });
  const bought = packs.reduce((sum, { offer, count }) => sum + count * offer.packSize, 0);
  return {
    packs,
    cost: cents(packs.reduce((sum, { cost }) => sum + cost, 0)),
    leftOver: pieces(bought - need),
    more: null,
    exact,
  };
}
