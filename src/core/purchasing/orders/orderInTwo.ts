/** An order in two parts: what must go out now, and what can wait for the next order day. */
import { cents, type Cents } from "../../base/units";
import { planOrder } from "./order";
import type { PlanCuts } from "./orderCuts";
import type { OrderInput } from "./orderInput";
import type { OrderPlan } from "./orderPlan";
import { itemKey, type ShowSize } from "../sizedItem";

export type OrderInTwo = {
  readonly now: OrderPlan;
  readonly canWait: OrderPlan;
  /** What two orders cost more than the one: freight and packs twice. */
  readonly costsMore: Cents;
};

/**
 * Splits by item, as the whole order says when each must go out. An item can wait when all that is
 * bought of it may still be ordered on `nextOrderDay`; with no date known it goes now.
 */
export function orderInTwo(
  input: OrderInput,
  whole: OrderPlan,
  nextOrderDay: number,
  planCuts: PlanCuts,
  show: ShowSize,
): OrderInTwo {
  const due = new Set(
    whole.lines
      .filter((line) => line.buy > 0 && line.kind !== "cut")
      .filter(({ deadline }) => deadline === null || deadline.orderBy < nextOrderDay)
      .map(itemKey),
  );
  const part = (isNow: boolean): OrderPlan =>
    planOrder(
      { ...input, demands: input.demands.filter((demand) => due.has(itemKey(demand)) === isNow) },
      planCuts,
      show,
    );
  const now = part(true);
  const canWait = part(false);
  return { now, canWait, costsMore: cents(now.total + canWait.total - whole.total) };
}
