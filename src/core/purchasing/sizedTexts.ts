/** Sizes of an order in words, so that two lines of one item never read alike. */
import type { LengthStyle } from "../lengths/writeLength";
import { sizeTexts, type SizeText } from "../takeoff/sizeTexts";
import type { OrderPlan } from "./orders/orderPlan";
import { sizedKey } from "./sizedItem";

/** Words for the lines of the plan and for what it leaves over. */
export function sizedTexts({ lines, leftOver }: OrderPlan, style: LengthStyle): SizeText {
  const once = new Map([...lines, ...leftOver].map((each) => [sizedKey(each), each]));
  return sizeTexts([...once.values()], style);
}
