/** The sheets of an order: one per supplier, then whose cost it is, the needs, the cuts, the rest. */
import { itemKey } from "../core/pricing/item";
import { sizedTexts } from "../core/purchasing/sizedTexts";
import { allocationSheet } from "../sheets/allocationSheet";
import { cutListSheet } from "../sheets/cutListSheet";
import { leftOverSheet } from "../sheets/leftOverSheet";
import { orderNeedsSheet } from "../sheets/orderNeedsSheet";
import type { OrderSheetWish } from "../sheets/orderWish";
import { supplierOrderSheet } from "../sheets/supplierOrderSheet";
import type { Drawing } from "../workbook/drawing";
import type { JobsOrder } from "./orderJobs";
import { currencyIn, lengthStyleOf } from "./settings";

export function orderDrawings({ plan, settings, chosen, complete }: JobsOrder): readonly Drawing[] {
  const describe = (code: string): string =>
    chosen
      .map(({ file }) => file.takeOff.estimate.items.get(itemKey(code))?.description)
      .find((words) => words !== undefined) ?? "";
  const lengths = lengthStyleOf(settings);
  const wish: OrderSheetWish = {
    plan,
    complete,
    lengths,
    sizeText: sizedTexts(plan, lengths),
    currency: currencyIn(settings),
    describe,
  };
  return [
    ...plan.charges.map((charge) => supplierOrderSheet(charge, wish)),
    allocationSheet(wish),
    orderNeedsSheet(wish),
    ...(plan.cutPlans.length === 0 ? [] : [cutListSheet(wish)]),
    leftOverSheet(wish),
  ];
}
