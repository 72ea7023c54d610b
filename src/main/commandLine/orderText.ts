/** The order as text that a person reads in a terminal. */
import { dateText } from "../../core/base/date";
import type { Cents } from "../../core/base/units";
import { moneyText } from "../../core/money/writeMoney";
import { cutPlanWords } from "../../core/purchasing/cutting/cutWords";
import { sizedTexts } from "../../core/purchasing/sizedTexts";
import type { JobsOrder } from "../../app/orders/orderJobs";
import { currencyIn, lengthStyleOf } from "../../app/settings";
import { findingsText } from "./takeOffText";
import { textTable } from "./textTable";

/** What was done with the order besides working it out; `null` for none. */
export type OrderSaid = {
  readonly split: {
    readonly part: "now" | "can wait";
    /** A date serial. */
    readonly nextOrderDay: number;
    readonly costsMore: Cents;
  } | null;
  /** Under which it was kept. */
  readonly number: string | null;
};

export function orderText(
  { plan, settings, findings, complete }: JobsOrder,
  { split, number }: OrderSaid,
): string {
  const currency = currencyIn(settings);
  const size = sizedTexts(plan, lengthStyleOf(settings));
  const money = (amount: Parameters<typeof moneyText>[0]): string => moneyText(amount, currency);
  const bought = plan.lines.flatMap((line) => line.packs.map((packs) => ({ line, packs })));
  const suppliers = plan.charges.flatMap(({ supplier, goods, madeUp, freight }) => [
    "",
    `${supplier}: ${money(goods)}` +
      (madeUp === 0 ? "" : `, made up to the least order with ${money(madeUp)}`) +
      (freight === 0 ? "" : `, freight ${money(freight)}`),
    ...textTable(
      [
        { heading: "Item", align: "left" },
        { heading: "Size", align: "right" },
        { heading: "Need", align: "right" },
        { heading: "Packs", align: "right" },
        { heading: "Of", align: "right" },
        { heading: "Price", align: "right" },
        { heading: "Cost", align: "right" },
        { heading: "Left over", align: "right" },
        { heading: "Order by", align: "left" },
      ],
      bought
        .filter(({ packs }) => packs.offer.supplier === supplier)
        .map(({ line, packs }) => [
          line.item,
          size(line),
          String(line.buy),
          String(packs.count),
          String(packs.offer.packSize),
          money(packs.offer.price),
          money(packs.cost),
          String(line.leftOver),
          packs.deadline === null ? "" : dateText(packs.deadline.orderBy),
        ]),
    ).map((line) => `  ${line}`),
  ]);
  const { saved } = plan;
  return [
    `Order for ${plan.jobs.map(({ job }) => job).join("; ") || "no job"}`,
    ...(split === null
      ? []
      : [
          split.part === "now"
            ? `Only what must go out before ${dateText(split.nextOrderDay)}.`
            : `Only what may still go out on ${dateText(split.nextOrderDay)}.`,
          `Two orders cost ${money(split.costsMore)} more than one.`,
        ]),
    ...suppliers,
    "",
    ...plan.cutPlans.map((cuts) => `Cut ${cuts.item}: ${cutPlanWords(cuts, currency)}`),
    "",
    ...plan.shares.map(({ job, cost }) => `${job ?? "Stock"}: ${money(cost)}`),
    `Total: ${money(plan.total)}`,
    ...(saved === null
      ? []
      : [
          `Saved against ordering job by job: ${money(saved.money)}, ${saved.pieces} pieces, ${saved.packs} packs`,
        ]),
    "",
    ...findingsText(findings.map(({ finding }) => finding)),
    "",
    ...(number === null ? [] : [`Kept as draft ${number}.`]),
    complete ? "Everything is on the order." : "NOT COMPLETE: see the stops above.",
  ].join("\n");
}
