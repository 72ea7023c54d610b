/**
 * The exact dynamic programme behind `packs.ts`.
 *
 * In steps of the pack sizes' greatest common divisor, table `k` holds for each rest of the need
 * the best way to cover it with the sales from the `k`-th on. Within one price break a count is
 * either the break's own or one pack more than a smaller count, so each cell looks at two others.
 * Time is steps x breaks; memory is steps x sales.
 */
import { greatestCommonDivisor } from "../../base/exact";
import type { PackSale } from "./packSale";

/** A table is no longer than this; a second's work or two for ten breaks. */
const mostSteps = 4_000_000;

/**
 * How many packs of each sale cover `need` for the least money; on a tie the fewest packs, then the
 * least left over, then the most of the earliest sale. `null` when no cover leaves over at most
 * `mostLeft`; "too long" when the table would be.
 */
export function cheapestCounts(
  need: number,
  sales: readonly PackSale[],
  mostLeft: number,
): readonly number[] | "too long" | null {
  if (need === 0) return sales.map(() => 0);
  const step = sales.reduce((all, sale) => greatestCommonDivisor(all, sale.packSize), 0);
  if (step === 0) return null;
  const sizes = sales.map((sale) => sale.packSize / step);
  const steps = Math.ceil(need / step);
  const mostOver = Math.floor((need + mostLeft) / step) - steps;
  const settled = settleMany(steps, sizes, sales);
  const rest = steps - settled.count * (sizes[settled.sale] ?? 0);
  if (rest > mostSteps) return "too long";
  const breaks = sales.map((sale, index) =>
    index === settled.sale && settled.count > 0
      ? // Its lowest price is reached already: any count of further packs has it.
        [{ from: 1, price: sale.breaks.at(-1)?.price ?? 0 }]
      : sale.breaks,
  );
  const counts = fillTables(rest, sizes, breaks, mostOver);
  return (
    counts?.map((count, index) => (index === settled.sale ? count + settled.count : count)) ?? null
  );
}

/**
 * Packs that a best cover of a large need is sure to have, so that the table stays short.
 *
 * Let `b` be the lowest price for a piece, the largest pack of those. Of any `size(b)` packs some
 * add up to a multiple of `size(b)`; packs of `b` in their place cost no more, are no more, and
 * leave over the same. So a best cover has fewer than `size(b)` packs beyond the other sales' price
 * breaks, and all the rest of the need is packs of `b`.
 */
function settleMany(
  steps: number,
  sizes: readonly number[],
  sales: readonly PackSale[],
): { readonly sale: number; readonly count: number } {
  const lowest = sales.map((sale) => sale.breaks.at(-1)?.price ?? 0);
  const best = sizes.reduce((chosen, size, index) => {
    const priceTimesSize = (lowest[index] ?? 0) * (sizes[chosen] ?? 1);
    const chosenPrice = (lowest[chosen] ?? 0) * size;
    const isLower = priceTimesSize < chosenPrice;
    const isLarger = priceTimesSize === chosenPrice && size > (sizes[chosen] ?? 0);
    return isLower || isLarger ? index : chosen;
  }, 0);
  const size = sizes[best] ?? 1;
  const largest = sizes.reduce((most, each) => Math.max(most, each), 0);
  const atBreaks = sales.reduce(
    (sum, sale, index) => sum + (sale.breaks.at(-1)?.from ?? 0) * (sizes[index] ?? 0),
    0,
  );
  const others = atBreaks + (size - 1) * largest;
  const count = Math.floor((steps - others) / size);
  const from = sales[best]?.breaks.at(-1)?.from ?? 0;
  return { sale: best, count: count >= from ? count : 0 };
}

type Break = { readonly from: number; readonly price: number };

/**
 * The best cover of each rest: its cost, infinite for none, and what settles a tie. Packs and steps
 * left over are one number, packs times `perPack` plus steps, which compares as the two would.
 */
type Table = { readonly cost: Float64Array; readonly tie: Float64Array };

/** More steps than may be left over, and small enough that the packs of any table fit beside it. */
const perPack = 2 ** 27;

const emptyTable = (steps: number): Table => ({
  cost: new Float64Array(steps + 1).fill(Infinity),
  tie: new Float64Array(steps + 1),
});

function fillTables(
  steps: number,
  sizes: readonly number[],
  breaks: readonly (readonly Break[])[],
  mostOver: number,
): readonly number[] | null {
  const own = { table: emptyTable(steps), counts: new Int32Array(steps + 1) };
  let later = emptyTable(steps);
  later.cost[0] = 0;
  const chosen: Int32Array[] = [];
  for (let sale = sizes.length - 1; sale >= 0; sale -= 1) {
    const table = { cost: later.cost.slice(), tie: later.tie.slice() };
    const counts = new Int32Array(steps + 1);
    for (const each of breaks[sale] ?? []) {
      fillBreak(steps, sizes[sale] ?? 1, each, mostOver, later, own.table, own.counts);
      takeBetter(steps, own.table, own.counts, table, counts);
    }
    chosen.unshift(counts);
    later = table;
  }
  if (later.cost[steps] === Infinity) return null;
  let rest = steps;
  return chosen.map((counts, sale) => {
    const count = counts[rest] ?? 0;
    rest = Math.max(0, rest - count * (sizes[sale] ?? 0));
    return count;
  });
}

/** The best covers with at least `from` packs of one sale at `price`, and `later` for the rest. */
function fillBreak(
  steps: number,
  size: number,
  { from, price }: Break,
  mostOver: number,
  later: Table,
  { cost, tie }: Table,
  counts: Int32Array,
): void {
  const reach = from * size;
  const base = from * price;
  const most = Math.min(mostOver, perPack - 1);
  for (let rest = 1; rest <= steps; rest += 1) {
    const before = rest > reach ? rest - reach : 0;
    const over = reach > rest ? reach - rest : 0;
    let least = over > most ? Infinity : (later.cost[before] ?? 0) + base;
    let leastTie = (later.tie[before] ?? 0) + from * perPack + over;
    let count = from;
    if (rest > size) {
      const oneCost = (cost[rest - size] ?? 0) + price;
      const oneTie = (tie[rest - size] ?? 0) + perPack;
      // On a full tie the larger count, for it takes more of the earlier sale.
      if (oneCost < least || (oneCost === least && oneTie <= leastTie)) {
        least = oneCost;
        leastTie = oneTie;
        count = (counts[rest - size] ?? 0) + 1;
      }
    }
    cost[rest] = least;
    tie[rest] = leastTie;
    counts[rest] = count;
  }
}

/** Puts the covers of `own` that are better into `table`; on a full tie those with the larger count. */
function takeBetter(
  steps: number,
  own: Table,
  ownCounts: Int32Array,
  { cost, tie }: Table,
  counts: Int32Array,
): void {
  for (let rest = 1; rest <= steps; rest += 1) {
    const newCost = own.cost[rest] ?? 0;
    const oldCost = cost[rest] ?? 0;
    if (newCost > oldCost) continue;
    const newTie = own.tie[rest] ?? 0;
    const oldTie = tie[rest] ?? 0;
    const isTie = newCost === oldCost && newTie === oldTie;
    if (newCost === oldCost && newTie > oldTie) continue;
    if (isTie && (ownCounts[rest] ?? 0) <= (counts[rest] ?? 0)) continue;
    cost[rest] = newCost;
    tie[rest] = newTie;
    counts[rest] = ownCounts[rest] ?? 0;
  }
}
