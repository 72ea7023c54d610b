/** Prices for a person at a terminal. */
import { moneyText } from "../../core/money/writeMoney";
import type { Cents } from "../../core/base/units";
import type { Currency } from "../../core/money/currency";
import type { MeasureKind, MeasureStyle } from "../../core/measures/measures";
import { shownAmount, shownUnit, withCommas } from "../../core/measures/writeMeasure";
import type { PricedAlternate } from "../../core/pricing/alternates/alternates";
import { percentOfShare, percentText } from "../../core/pricing/rates/percent";
import type { WorkbookLoads } from "../../app/pricing/workbookLoads";
import type { WorkbookPrices } from "../../app/pricing/priceWorkbook";
import { textTable, type TextColumn } from "./textTable";

export const columns = (left: readonly string[], right: readonly string[]): TextColumn[] => [
  ...left.map((heading): TextColumn => ({ heading, align: "left" })),
  ...right.map((heading): TextColumn => ({ heading, align: "right" })),
];

/** In percent, to a tenth. */
export const shareText = (value: number | null): string =>
  value === null ? "" : percentText(percentOfShare(Math.round(value * 1000) / 1000));

export function priceText({ jobs, margins }: WorkbookPrices, currency: Currency): string {
  const money = (amount: Parameters<typeof moneyText>[0]): string => moneyText(amount, currency);
  return [
    ...jobs.flatMap(({ job, rollUp, hours, alternates }) => [
      `${job}: ${hours.hundredths / 100} hours`,
      ...textTable(
        [...columns(["Line"], ["Amount"]), ...columns(["How"], [])],
        [
          ...rollUp.lines.map(({ label, amount, words }) => [label, money(amount), words]),
          ...alternates.map((alternate) => [
            `${alternate.name} (${alternate.kind})`,
            money(alternate.addsPrice),
            alternateWords(alternate, money),
          ]),
        ],
      ).map((line) => `  ${line}`),
      ...(rollUp.notPriced.length === 0 ? [] : [`  NOT IN IT: ${rollUp.notPriced.join(", ")}`]),
      "",
    ]),
    ...textTable(
      columns(["Job"], ["Cost", "Price", "Profit", "Markup", "Margin", "Short of target"]),
      margins.rows.map((row) => [
        row.job,
        money(row.cost),
        money(row.price),
        money(row.profit),
        shareText(row.markup),
        shareText(row.margin),
        money(row.short),
      ]),
    ),
  ].join("\n");
}

function alternateWords(
  { addsCost, addsHours, rollUp, how, notPriced }: PricedAlternate,
  money: (amount: Cents) => string,
): string {
  const least = notPriced.length === 0 ? "" : `; ONLY A LEAST, without ${notPriced.join(", ")}`;
  return `added to the price, which with it is ${money(rollUp.price)}: adds ${money(addsCost)} of cost and ${addsHours / 100} hours; ${how}${least}`;
}

/** One line for each opening that hangs from a track. */
export function loadsText({ jobs }: WorkbookLoads, style: MeasureStyle): readonly string[] {
  const figure = (value: number | null | undefined, kind: MeasureKind = "weight"): string =>
    value === null || value === undefined
      ? ""
      : withCommas(shownAmount(value, kind, style).toFixed(0));
  const most = (values: readonly number[] | undefined): number | undefined =>
    values === undefined ? undefined : Math.max(0, ...values);
  const rows = jobs.flatMap(({ job, openings }) =>
    openings.map(({ opening, leafWeight, loads, checked }) => [
      job,
      opening.mark,
      checked.verdict,
      figure(leafWeight),
      figure(most(loads?.trolleys.map(({ load }) => load))),
      figure(most(loads?.hangers.map(({ load }) => load))),
      figure(most(loads?.spans.map(({ moment }) => moment)), "bending"),
    ]),
  );
  if (rows.length === 0) return [];
  const weight = shownUnit("weight", style).name;
  const bending = shownUnit("bending", style).name;
  const numbers = [
    ...["Leaf", "Trolley", "Hanger"].map((of) => `${of} ${weight}`),
    `Track ${bending}`,
  ];
  const [caution = ""] = jobs.flatMap((job) => job.openings.map(({ checked }) => checked.caution));
  return [...textTable(columns(["Job", "Mark", "Hanging loads"], numbers), rows), caution];
}
