/** The steps from a count to what is bought, in words. */
import type { NeedStepKind } from "./need";
import type { OrderLine } from "./orders/orderPlan";

export const stepWords: Readonly<Record<NeedStepKind, string>> = {
  counted: "counted",
  spares: "spares",
  supplied: "has already",
  "job-on-order": "is on order",
  "on-hand": "on hand",
  "on-order": "free on order",
};

/** `14 left over; buying more reaches a lower price and costs less`; empty where nothing is. */
export function moreWords({ more, leftOver }: Pick<OrderLine, "more" | "leftOver">): string {
  if (leftOver === 0) return "";
  return more === null
    ? `${leftOver} left over`
    : `${leftOver} left over; buying more reaches a lower price and costs less`;
}
