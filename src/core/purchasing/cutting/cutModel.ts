/**
 * A cut problem in plain whole numbers, as the planning works on it.
 *
 * Kerf and trim are gone: `k` pieces need `k - 1` cuts, and one more where something is left, so
 * they fit a bar when the sum of (piece + kerf) is at most (bar - trim + kerf). A piece's size is
 * that sum's part, a bar's room its limit.
 */

import { greatestCommonDivisor } from "../../base/exact";
import type { CutLength } from "./cutLength";
import type { BarsOnHand, CutPieces, CutProblem, StockLength } from "./cutProblem";

/** A kind of bar: of one length, bought or on hand. */
export type BarKind = {
  readonly from: "stock" | "onHand";
  readonly length: CutLength;
  readonly price: number;
  /** How many there are; `Infinity` for what can be bought. */
  readonly most: number;
  /** In the unit of `CutModel.sizes`. */
  readonly room: number;
};

/**
 * Sizes and rooms in coarser steps, for tables with one entry a step. `exact` says that nothing
 * was rounded; otherwise `sizes` are rounded the way that `use` needs.
 */
export type Grid = { readonly sizes: readonly number[]; readonly rooms: readonly number[] };

export type CutModel = {
  /** The lengths to cut that some bar can hold, longest first. */
  readonly lengths: readonly CutLength[];
  /** How many of each length. */
  readonly demands: readonly number[];
  /** Sizes by length, in multiples of their greatest common divisor. */
  readonly sizes: readonly number[];
  /** On hand first, shortest first; then stock, shortest first. */
  readonly kinds: readonly BarKind[];
  /** Sizes rounded up: what fits in these steps fits. */
  readonly safeGrid: Grid;
  /** Sizes rounded down: what does not fit in these steps does not fit. The same where none is rounded. */
  readonly boundGrid: Grid;
  /** Pieces that no bar can hold. */
  readonly tooLong: readonly CutPieces[];
};

/**
 * The most steps a table may have. A 24 ft bar has 4,608 sixteenths of an inch and 7,315 mm, so
 * rounding starts only with finer tapes.
 */
const mostSteps = 12_000;

export function cutModel(problem: CutProblem): CutModel {
  const { saw, pieces } = problem;
  const bars = [
    ...mergeOnHand(problem.onHand).map((bar) => ({
      from: "onHand" as const,
      length: bar.length,
      price: 0,
      most: bar.count,
      space: bar.length + saw.kerf,
    })),
    ...worthBuying(problem.stock).map((bar) => ({
      from: "stock" as const,
      length: bar.length,
      price: bar.price,
      most: Infinity,
      space: bar.length - saw.endTrim + saw.kerf,
    })),
  ];
  const widest = bars.reduce((most, bar) => Math.max(most, bar.space), 0);
  const isTooLong = (piece: CutPieces): boolean => piece.length + saw.kerf > widest;

  const counts = new Map<CutLength, number>();
  for (const piece of pieces) {
    if (piece.count === 0 || isTooLong(piece)) continue;
    counts.set(piece.length, (counts.get(piece.length) ?? 0) + piece.count);
  }
  const byLength = [...counts].sort(([a], [b]) => b - a);
  const step =
    byLength.reduce((divisor, [length]) => greatestCommonDivisor(divisor, length + saw.kerf), 0) ||
    1;
  const sizes = byLength.map(([length]) => (length + saw.kerf) / step);
  const shortest = sizes.at(-1) ?? Infinity;
  const kinds = bars
    .map(({ space, ...bar }) => ({ ...bar, room: Math.floor(space / step) }))
    .filter((kind) => kind.room >= shortest);
  return {
    lengths: byLength.map(([length]) => length),
    demands: byLength.map(([, count]) => count),
    sizes,
    kinds,
    ...grids(sizes, kinds),
    tooLong: pieces.filter((piece) => piece.count > 0 && isTooLong(piece)),
  };
}

/** Whether some bar that can be bought holds the length. */
export const canBuyFor = (model: CutModel, index: number): boolean =>
  model.kinds.some(
    (kind) => kind.from === "stock" && kind.room >= (model.sizes[index] ?? Infinity),
  );

function grids(
  sizes: readonly number[],
  kinds: readonly BarKind[],
): Pick<CutModel, "safeGrid" | "boundGrid"> {
  const widest = kinds.reduce((most, kind) => Math.max(most, kind.room), 0);
  const coarse = Math.max(1, Math.ceil(widest / mostSteps));
  const rooms = kinds.map((kind) => Math.floor(kind.room / coarse));
  const exact = { sizes, rooms };
  if (coarse === 1) return { safeGrid: exact, boundGrid: exact };
  return {
    safeGrid: { sizes: sizes.map((size) => Math.ceil(size / coarse)), rooms },
    boundGrid: { sizes: sizes.map((size) => Math.floor(size / coarse)), rooms },
  };
}

function mergeOnHand(bars: readonly BarsOnHand[]): readonly { length: CutLength; count: number }[] {
  const counts = new Map<CutLength, number>();
  for (const bar of bars) counts.set(bar.length, (counts.get(bar.length) ?? 0) + bar.count);
  return [...counts]
    .filter(([, count]) => count > 0)
    .map(([length, count]) => ({ length, count }))
    .sort((a, b) => a.length - b.length);
}

/** Leaves out a bar where another as long or longer costs no more; shortest first. */
function worthBuying(stock: readonly StockLength[]): readonly StockLength[] {
  const worth: StockLength[] = [];
  for (const bar of stock.toSorted((a, b) => b.length - a.length || a.price - b.price)) {
    const longer = worth.at(-1);
    if (longer === undefined || bar.price < longer.price) worth.push(bar);
  }
  return worth.reverse();
}
