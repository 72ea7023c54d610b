/** Phase two of an order: one cut plan per item that is cut, over all jobs. */
import type { Finding } from "../../base/finding";
import { pieces } from "../../base/units";
import { barOffers, barsAmong, cutProblemOf, type BarOffers } from "../bars";
import type { CutPlan, CutProblem } from "../cutting/cutProblem";
import { groupBy } from "../../base/groupBy";
import type { OrderInput } from "./orderInput";
import type { SizedPieces } from "../sizedPieces";
import { earliest, type OrderNeed } from "./orderNeeds";
import { itemKey, sizedKey } from "../sizedItem";
import { timelyOffers } from "../offers/timelyOffers";

/**
 * Plans the cuts of a problem. `order`: what is really bought and cut; worth a solver and time.
 * `alone`: one job by itself, only to say what the common order saves.
 */
export type PlanCuts = (problem: CutProblem, purpose: "order" | "alone") => CutPlan;

export type ItemCuts = {
  readonly problem: CutProblem;
  readonly plan: CutPlan;
  readonly offers: BarOffers;
  /** The earliest date of the jobs that it is cut for. */
  readonly needBy: number | null;
  readonly leftOut: readonly Finding[];
};

/** By item, in the order of the needs. Bars and offcuts on hand come first, then free ones on order. */
export function orderCuts(
  input: OrderInput,
  needs: readonly OrderNeed[],
  planCuts: PlanCuts,
): readonly ItemCuts[] {
  const cut = needs.filter((each) => each.cut.length > 0);
  return [...groupBy(cut, ({ need }) => itemKey(need)).values()].map((ofItem) => {
    const item = ofItem[0]?.need.item ?? "";
    const needBy = earliest(ofItem.map((each) => each.needBy));
    const barsOffered = [...barOffers(item, input.offers).values()].flat();
    const { offers, leftOut } = input.leaveOutLate
      ? timelyOffers(barsOffered, needBy, input.timing)
      : { offers: barsOffered, leftOut: [] };
    const byLength = barOffers(item, offers);
    const { onHand, onOrder } = input.standing;
    const free = [...notTaken(onHand, needs, "fromHand"), ...notTaken(onOrder, needs, "fromOrder")];
    const pieces = ofItem.flatMap((each) => each.cut);
    const problem = cutProblemOf(item, pieces, byLength, barsAmong(item, free), input.saw(item));
    return { problem, plan: planCuts(problem, "order"), offers: byLength, needBy, leftOut };
  });
}

/** What needs that are not cut leave of the stock. */
const notTaken = (
  stock: readonly SizedPieces[],
  needs: readonly OrderNeed[],
  from: "fromHand" | "fromOrder",
): readonly SizedPieces[] => {
  const taken = new Map<string, number>(needs.map(({ need }) => [sizedKey(need), need[from]]));
  return stock.map((each) => {
    const used = Math.min(each.pieces, taken.get(sizedKey(each)) ?? 0);
    taken.set(sizedKey(each), (taken.get(sizedKey(each)) ?? 0) - used);
    return { ...each, pieces: pieces(each.pieces - used) };
  });
};
