/** An order in two, each worked out by itself: what must go out now, and what can wait. */
import type { Cents } from "../../core/base/units";
import { writeSize } from "../../core/lengths/writeLength";
import type { PlanCuts } from "../../core/purchasing/orders/orderCuts";
import { orderInTwo } from "../../core/purchasing/orders/orderInTwo";
import { plannedOrder, type JobsOrder } from "./orderJobs";
import { lengthStyleOf } from "../settings";

export type OrderInParts = {
  readonly now: JobsOrder;
  readonly canWait: JobsOrder;
  /** What two orders cost more than the one. */
  readonly costsMore: Cents;
};

/** What may still be ordered on `nextOrderDay`, a date serial, can wait; without a date it goes now. */
export function orderInParts(
  order: JobsOrder,
  nextOrderDay: number,
  planCuts: PlanCuts,
): OrderInParts {
  const { input, plan, settings, findings } = order;
  const style = lengthStyleOf(settings);
  const parts = orderInTwo(input, plan, nextOrderDay, planCuts, (size) => writeSize(size, style));
  const prepared = {
    ...order,
    findings: findings.filter(({ finding }) => !plan.findings.includes(finding)),
  };
  return {
    now: plannedOrder(prepared, parts.now),
    canWait: plannedOrder(prepared, parts.canWait),
    costsMore: parts.costsMore,
  };
}
