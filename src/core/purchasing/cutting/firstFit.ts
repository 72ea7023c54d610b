/** First-fit decreasing: the cut plan that is always there, in an instant and without a solver. */
import type { BarKind, CutModel } from "./cutModel";
import { costOf, cutAlike, heldBy, restAfter, shrinkBars, type Cut, type Rest } from "./cuts";

/**
 * Cuts the rest: bars on hand first, shortest first, then new bars; each is filled with the longest
 * piece that fits, again and again. That is what first-fit decreasing comes to, bar by bar.
 *
 * Several stock lengths: one try with each length in the lead and one that takes, bar by bar, the
 * length that costs least for what it holds; the cheapest try wins, the earlier on a tie. Then each
 * bar changes to the cheapest length that holds its pieces. A piece that needs a bar on hand and
 * finds none is left over.
 */
export function firstFit(model: CutModel, rest: Rest): readonly Cut[] {
  const stock = model.kinds.flatMap((kind, index) => (kind.from === "stock" ? [index] : []));
  const fromShelf = cutFromShelf(model, rest);
  const left = restAfter(rest, fromShelf);
  const leads = stock.length > 1 ? [...stock, null] : stock;
  const tries = leads.map((lead) =>
    shrinkBars(model, [...fromShelf, ...cutNew(model, left, stock, lead)]),
  );
  const [first = fromShelf, ...others] = tries;
  return others.reduce(
    (best, next) => (costOf(model, next) < costOf(model, best) ? next : best),
    first,
  );
}

function cutFromShelf(model: CutModel, rest: Rest): readonly Cut[] {
  const cuts: Cut[] = [];
  let left = rest;
  model.kinds.forEach((bar, kind) => {
    while (bar.from === "onHand") {
      const cut = cutAlike(left, { kind, counts: fill(model, bar, left) }, Infinity);
      if (cut === null) break;
      cuts.push(cut);
      left = restAfter(left, [cut]);
    }
  });
  return cuts;
}

function cutNew(
  model: CutModel,
  rest: Rest,
  stock: readonly number[],
  lead: number | null,
): readonly Cut[] {
  const cuts: Cut[] = [];
  let left = rest;
  for (;;) {
    const options = stock.flatMap((kind) => {
      const bar = model.kinds[kind];
      if (bar === undefined) return [];
      const counts = fill(model, bar, left);
      const held = heldBy(model, counts);
      return held === 0 ? [] : [{ kind, counts, worth: held / Math.max(bar.price, 1e-9) }];
    });
    const [first, ...others] = options;
    if (first === undefined) return cuts;
    const best =
      options.find(({ kind }) => kind === lead) ??
      others.reduce((most, next) => (next.worth > most.worth ? next : most), first);
    const cut = cutAlike(left, best, Infinity);
    if (cut === null) return cuts;
    cuts.push(cut);
    left = restAfter(left, [cut]);
  }
}

/** Longest first, as many of each as fit. */
function fill(model: CutModel, bar: BarKind, rest: Rest): readonly number[] {
  let room = bar.room;
  return rest.demands.map((demand, index) => {
    const size = model.sizes[index] ?? Infinity;
    const count = Math.min(demand, Math.floor(room / size));
    room -= count * size;
    return count;
  });
}
