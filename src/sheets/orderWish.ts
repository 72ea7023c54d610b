/** What the sheets of an order are drawn with. */
import type { Cents } from "../core/base/units";
import type { LengthStyle } from "../core/lengths/writeLength";
import type { Currency } from "../core/money/currency";
import { majorUnits } from "../core/money/writeMoney";
import type { OrderLine, OrderPlan } from "../core/purchasing/orderPlan";
import type { SizedItem } from "../core/purchasing/sizedItem";
import type { SizeText } from "../core/takeoff/sizeTexts";
import type { DrawnCell } from "../workbook/drawing";
import { date, number, text, type Dress } from "./cells";

export type OrderSheetWish = {
  readonly plan: OrderPlan;
  readonly complete: boolean;
  readonly lengths: LengthStyle;
  /** The size of a line in words; never the same for two sizes of an item. */
  readonly sizeText: SizeText;
  readonly currency: Currency;
  /** An item's description; the empty text where it has none. */
  readonly describe: (item: string) => string;
};

export const notComplete =
  "NOT COMPLETE: not everything that is needed is on this order. See the findings.";

export const moneyCell = (amount: Cents, currency: Currency, dress: Dress = {}): DrawnCell =>
  number(majorUnits(amount, currency), "money", dress);

export const sizeCell = (sized: SizedItem, { sizeText }: OrderSheetWish): DrawnCell =>
  text(sizeText(sized), { align: "right" });

export const dateCell = (serial: number | null): DrawnCell =>
  serial === null ? text("") : date({ kind: "date", serial });

/** The jobs that a line gives something to; for bars, the jobs whose pieces are cut from them. */
export function jobsOf(line: OrderLine, plan: OrderPlan): readonly string[] {
  if (line.kind !== "bar") return line.forJobs.map(({ job }) => job);
  return [...new Set(line.shares.flatMap(({ job }) => (job === null ? [] : [job])))].filter((job) =>
    plan.jobs.some((each) => each.job === job),
  );
}
