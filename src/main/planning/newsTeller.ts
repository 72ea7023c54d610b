/** What of a search is worth telling: a plan written out and sent takes longer than many a step. */
import type { OrderNews, OrderStep } from "../../core/purchasing/orders/orderSearch";

/** Milliseconds between two bounds that are told; a better plan is told at once. */
const pause = 150;

/** Tells a step, or nothing where it brought nothing new. */
export function newsTeller(
  tell: (news: OrderNews) => void,
  now: () => number,
): (step: OrderStep) => void {
  let last: OrderStep | null = null;
  let toldAt = 0;
  return (step) => {
    const isOther = last?.at !== step.at || last.step !== step.step || last.cost !== step.cost;
    const isNearer = last?.lowerBound !== step.lowerBound && now() - toldAt > pause;
    if (!isOther && !isNearer) return;
    tell({ at: step.at, of: step.of, secondsLeft: step.secondsLeft, plan: step.plan() });
    last = step;
    toldAt = now();
  };
}
