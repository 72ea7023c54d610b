/** A cut plan as people read it: alike bars together, and how good it is in one sentence. */
import { counted } from "../../base/counted";
import { groupBy } from "../../base/groupBy";
import { moneyText } from "../../money/writeMoney";
import type { Currency } from "../../money/currency";
import type { CutLength } from "./cutLength";
import type { Bar, CutPlan } from "./cutProblem";

/** Bars of one length with the same lengths cut from them; marks may differ from bar to bar. */
export type BarGroup = Pick<Bar, "from" | "length" | "price" | "offcut" | "kept"> & {
  readonly bars: readonly Bar[];
};

/** In the order of the plan: bars on hand first, then new ones, each shortest first. */
export function barGroups(plan: CutPlan): readonly BarGroup[] {
  const alike = (bar: Bar): string =>
    [bar.from, bar.length, ...bar.pieces.map(({ length }) => length)].join(" ");
  return [...groupBy(plan.bars, alike).values()].flatMap((bars) => {
    const [first] = bars;
    if (first === undefined) return [];
    const { from, length, price, offcut, kept } = first;
    return [{ from, length, price, offcut, kept, bars }];
  });
}

/** Bars with the same pieces for the same marks, as one; in the order of the plan. */
export const alikeBars = ({ bars }: CutPlan): readonly (readonly Bar[])[] => [
  ...groupBy(bars, (bar) => JSON.stringify([bar.from, bar.length, bar.pieces])).values(),
];

/** `3 x 8'-0" (Alder: A-101, A-102 x 2; Birch: B-1)`, longest pieces first. */
export function pieceWords({ pieces }: Bar, show: (length: CutLength) => string): string {
  return [...groupBy(pieces, ({ length }) => length)]
    .sort(([a], [b]) => b - a)
    .map(([length, alike]) => `${alike.length} x ${show(length)} (${marksByJob(alike)})`)
    .join(", ");
}

function marksByJob(pieces: Bar["pieces"]): string {
  return [...groupBy(pieces, ({ job }) => job)]
    .map(([job, own]) => {
      const marks = [...groupBy(own, ({ mark }) => mark)].map(([mark, all]) =>
        all.length === 1 ? mark : `${mark} x ${all.length}`,
      );
      return `${job}: ${marks.join(", ")}`;
    })
    .join("; ");
}

/**
 * `12 bars; no plan has fewer than 12.` Where new bars are of several prices, their cost takes the
 * place of their number, with how far it is from the bound.
 */
export function cutPlanWords(plan: CutPlan, currency: Currency): string {
  const bought = plan.bars.filter(({ from }) => from === "stock");
  const prices = new Set(bought.map(({ price }) => price));
  const [price = 0] = prices;
  if (bought.length === 0) {
    return plan.bars.length === 0 ? "Nothing is cut." : "Cut from bars on hand; none is bought.";
  }
  if (prices.size === 1 && price > 0) {
    const least = Math.ceil(plan.lowerBound / price);
    return `${counted(bought.length, "bar")}; no plan has fewer than ${least}.`;
  }
  const { cost, lowerBound } = plan;
  const cheapest = moneyText(lowerBound, currency);
  const bars = `${counted(bought.length, "bar")} for ${moneyText(cost, currency)}`;
  if (cost === lowerBound) return `${bars}; no plan costs less.`;
  const gap = ((cost / Math.max(lowerBound, 1) - 1) * 100).toFixed(2);
  return `${bars}; no plan costs less than ${cheapest} (${gap} % above that).`;
}
