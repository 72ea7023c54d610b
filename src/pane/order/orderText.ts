/** How the parts of an order write money, sizes and dates. */
import type { JobsOrder } from "../../app/orders/orderJobs";
import { currencyIn, lengthStyleOf } from "../../app/settings";
import { dateText } from "../../core/base/date";
import type { Cents } from "../../core/base/units";
import { writeLength } from "../../core/lengths/writeLength";
import type { Currency } from "../../core/money/currency";
import { moneyText } from "../../core/money/writeMoney";
import { itemKey } from "../../core/pricing/item";
import { inchesOf, type CutLength } from "../../core/purchasing/cutting/cutLength";
import type { Deadline } from "../../core/purchasing/orders/dates";
import type { SizedItem } from "../../core/purchasing/sizedItem";
import { sizedTexts } from "../../core/purchasing/sizedTexts";

export type OrderText = {
  readonly currency: Currency;
  readonly money: (amount: Cents) => string;
  /** Never the same for two sizes of an item; the empty text for none. */
  readonly size: (sized: SizedItem) => string;
  readonly length: (length: CutLength) => string;
  /** The item's description, or its code where it has none. */
  readonly describe: (item: string) => string;
};

export function orderText({ plan, settings, chosen }: JobsOrder): OrderText {
  const style = lengthStyleOf(settings);
  const currency = currencyIn(settings);
  return {
    currency,
    money: (amount) => moneyText(amount, currency),
    size: sizedTexts(plan, style),
    length: (length) => writeLength(inchesOf(length), style),
    describe: (item) =>
      chosen
        .map(({ file }) => file.takeOff.estimate.items.get(itemKey(item))?.description)
        .find((words) => words !== undefined && words !== "") ?? item,
  };
}

/** `order by 2026-12-04`, or by how much that is too late; `no date` where no job has one. */
export function deadlineWords(deadline: Deadline | null): string {
  if (deadline === null) return "no date";
  const { orderBy, lateDays } = deadline;
  const late =
    lateDays === 0 ? "" : `: ${lateDays} working ${lateDays === 1 ? "day" : "days"} late`;
  return `order by ${dateText(orderBy)}${late}`;
}
