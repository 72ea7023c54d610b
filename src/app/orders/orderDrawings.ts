/** The sheets of an order: one per supplier, then whose cost it is, the needs, the cuts, the rest. */
import { currencyOf, usDollar } from "../../core/money/currency";
import { itemKey } from "../../core/pricing/item";
import { orderContents } from "../../core/purchasing/books/orderContents";
import type { OrderContents } from "../../core/purchasing/books/orderRecord";
import { sizedTexts } from "../../core/purchasing/sizedTexts";
import { allocationSheet } from "../../sheets/orders/allocationSheet";
import { cutListSheet } from "../../sheets/orders/cutListSheet";
import { leftOverSheet } from "../../sheets/orders/leftOverSheet";
import { orderNeedsSheet } from "../../sheets/orders/orderNeedsSheet";
import type { OrderSheetWish, RecordedOrder } from "../../sheets/orders/orderWish";
import { supplierOrderSheet } from "../../sheets/orders/supplierOrderSheet";
import type { Drawing } from "../../workbook/drawing";
import type { JobsOrder } from "./orderJobs";
import { currencyIn, lengthStyleOf } from "../settings";

/** What is kept of an order, in the words that its sheets have. */
export function contentsOf(order: JobsOrder): OrderContents {
  const { plan, input, settings, complete } = order;
  const size = sizedTexts(plan, lengthStyleOf(settings));
  const describe = describer(order);
  return orderContents(plan, {
    standing: input.standing,
    wordsOf: (sized) => ({ description: describe(sized.item), size: size(sized) }),
    currency: currencyIn(settings).code,
    complete,
  });
}

/** All sheets of an order; `number` is `null` where it is not kept. */
export const orderDrawings = (
  order: JobsOrder,
  contents: OrderContents = contentsOf(order),
  number: string | null = null,
  stateWords = "Not kept in the order book",
): readonly Drawing[] => [
  ...contents.charges.map((charge) =>
    supplierOrderSheet(charge, recorded(contents, number, stateWords, false)),
  ),
  ...workedOut(order, contents, number),
];

/** What goes out to the suppliers, from the record alone. */
export const sentDrawings = (
  contents: OrderContents,
  number: string,
  stateWords: string,
): readonly Drawing[] =>
  contents.charges.map((charge) =>
    supplierOrderSheet(charge, recorded(contents, number, stateWords, true)),
  );

/** How it was worked out: whose cost it is, the needs, the cuts, what is left over. */
function workedOut(
  order: JobsOrder,
  contents: OrderContents,
  number: string | null,
): readonly Drawing[] {
  const { plan, settings, complete } = order;
  const lengths = lengthStyleOf(settings);
  const wish: OrderSheetWish = {
    plan,
    complete,
    lengths,
    sizeText: sizedTexts(plan, lengths),
    currency: currencyIn(settings),
    describe: describer(order),
    number,
  };
  return [
    allocationSheet(recorded(contents, number, "", false)),
    orderNeedsSheet(wish),
    ...(plan.cutPlans.length === 0 ? [] : [cutListSheet(wish)]),
    leftOverSheet(wish),
  ];
}

const recorded = (
  contents: OrderContents,
  number: string | null,
  stateWords: string,
  isSent: boolean,
): RecordedOrder => ({
  contents,
  currency: currencyOf(contents.currency) ?? usDollar,
  number,
  stateWords,
  isSent,
});

const describer =
  ({ chosen }: JobsOrder) =>
  (code: string): string =>
    chosen
      .map(({ file }) => file.takeOff.estimate.items.get(itemKey(code))?.description)
      .find((words) => words !== undefined) ?? "";
