/** Cuts as the planning counts them: bars of one kind cut alike, and what they leave to do. */
import type { CutModel } from "./cutModel";

/** How many of each length are cut from one bar of a kind (an index of `CutModel.kinds`). */
export type Column = { readonly kind: number; readonly counts: readonly number[] };

/** So many bars cut alike. */
export type Cut = Column & { readonly times: number };

/** What is still to be cut, by length, and how many bars of each kind are still there. */
export type Rest = { readonly demands: readonly number[]; readonly bars: readonly number[] };

export const wholeRest = (model: CutModel): Rest => ({
  demands: model.demands,
  bars: model.kinds.map((kind) => kind.most),
});

export const isDone = (rest: Rest): boolean => rest.demands.every((demand) => demand <= 0);

export const priceOf = (model: CutModel, column: Column): number =>
  model.kinds[column.kind]?.price ?? 0;

export const costOf = (model: CutModel, cuts: readonly Cut[]): number =>
  cuts.reduce((sum, cut) => sum + cut.times * priceOf(model, cut), 0);

/** The part of a bar's room that the pieces take. */
export const heldBy = (model: CutModel, counts: readonly number[]): number =>
  counts.reduce((sum, count, index) => sum + count * (model.sizes[index] ?? 0), 0);

export function restAfter(rest: Rest, cuts: readonly Cut[]): Rest {
  const demands = [...rest.demands];
  const bars = [...rest.bars];
  for (const { kind, counts, times } of cuts) {
    counts.forEach((count, index) => {
      demands[index] = (demands[index] ?? 0) - times * count;
    });
    bars[kind] = (bars[kind] ?? 0) - times;
  }
  return { demands, bars };
}

/**
 * The column cut from as many bars as the rest asks for and `most` allows, every bar alike; `null`
 * where that is none.
 */
export function cutAlike(rest: Rest, { kind, counts }: Column, most: number): Cut | null {
  const bars = Math.min(most, rest.bars[kind] ?? 0);
  const times = counts.reduce(
    (least, count, index) =>
      count === 0 ? least : Math.min(least, Math.floor((rest.demands[index] ?? 0) / count)),
    bars,
  );
  return times > 0 && counts.some((count) => count > 0) ? { kind, counts, times } : null;
}

/** Each column cut up to so many times, leaving out pieces that the rest no longer asks for. */
export function cutColumns(
  rest: Rest,
  columns: readonly Column[],
  times: readonly number[],
): readonly Cut[] {
  const cuts: Cut[] = [];
  let left = rest;
  columns.forEach((column, index) => {
    let most = times[index] ?? 0;
    while (most > 0) {
      const wanted = column.counts.map((count, at) => Math.min(count, left.demands[at] ?? 0));
      const cut = cutAlike(left, { kind: column.kind, counts: wanted }, most);
      if (cut === null) break;
      cuts.push(cut);
      left = restAfter(left, [cut]);
      most -= cut.times;
    }
  });
  return cuts;
}

/** Changes each new bar to the cheapest kind that holds what is cut from it. */
export function shrinkBars(model: CutModel, cuts: readonly Cut[]): readonly Cut[] {
  return cuts.map((cut) => {
    if (model.kinds[cut.kind]?.from !== "stock") return cut;
    const held = heldBy(model, cut.counts);
    // Shortest first, and what can be bought costs more the longer it is.
    const kind = model.kinds.findIndex(({ from, room }) => from === "stock" && room >= held);
    return { ...cut, kind };
  });
}

/** Fewer pieces left over first, then less cost. */
export function isBetter(model: CutModel, a: readonly Cut[], b: readonly Cut[]): boolean {
  const left = (cuts: readonly Cut[]): number =>
    restAfter(wholeRest(model), cuts).demands.reduce((sum, count) => sum + count, 0);
  const fewer = left(b) - left(a);
  return fewer > 0 || (fewer === 0 && costOf(model, a) < costOf(model, b));
}
