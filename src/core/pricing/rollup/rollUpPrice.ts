/** The lines of a roll-up from its cost to what the customer pays. */
import { lineOver, typedLine } from "./lineRules";
import { percentText, type Percent } from "../rates/percent";
import type { RollUpInput } from "./rollUpInput";
import type { LineKey, RollUpLine } from "./rollUpLine";

/** Keys of the lines that other code looks up. */
export const lineKeys = {
  costBeforeBond: "cost before bond",
  bond: "bond",
  cost: "cost",
  exactPrice: "price before rounding",
  price: "price",
  profit: "profit",
  taxable: "taxable part of the price",
  taxCharged: "sales tax",
  priceWithTax: "price with tax",
} as const satisfies Readonly<Record<string, LineKey>>;

/** The price, and before it, where it is made a round one, what it was made from. */
export type PriceLines = {
  readonly before: readonly RollUpLine[];
  readonly price: RollUpLine;
};

/** `bondRate` is that of a bond on the price, which `cost` does not hold yet; else `null`. */
export function priceLines(
  { price: rule, rounding }: Pick<RollUpInput, "price" | "rounding">,
  cost: RollUpLine,
  bondRate: Percent | null,
): PriceLines {
  const group = "price";
  const named = { key: lineKeys.price, group, label: "Price" } as const;
  if (rule.method === "typed") {
    return { before: [], price: typedLine({ ...named, words: "as typed" }, rule.price) };
  }
  const { step, way } = rounding;
  const rate = percentText(rule.percent);
  const bond =
    bondRate === null ? "" : `, the bond's ${percentText(bondRate)} of the price included`;
  const exact = lineOver(
    {
      ...(step === 0 ? named : { key: lineKeys.exactPrice, group, label: "Price before rounding" }),
      words:
        rule.method === "markup"
          ? `cost x (1 + markup ${rate})${bond}`
          : `cost / (1 - margin ${rate})${bond}`,
      wordsByRate:
        (rule.method === "markup" ? "cost x (1 + markup)" : "cost / (1 - margin)") +
        (bondRate === null ? "" : ", the bond included"),
    },
    rule.method,
    [cost],
    { kind: "percent", value: rule.percent },
    bondRate === null ? null : { key: lineKeys.bond, figure: bondRate },
  );
  if (step === 0) return { before: [], price: exact };
  const words = way === "up" ? `up to the next ${step}` : `to the nearest ${step}`;
  const wordsByRate = way === "up" ? "up to the next multiple" : "to the nearest multiple";
  const price = lineOver({ ...named, words, wordsByRate }, way, [exact], {
    kind: "step",
    value: step,
  });
  return { before: [exact], price };
}

/** A bond that is a percentage of the price. */
export const bondOnPrice = (rate: Percent, price: RollUpLine): RollUpLine =>
  lineOver(
    {
      key: lineKeys.bond,
      group: "bond",
      label: "Bond",
      words: `${percentText(rate)} of the price`,
      wordsByRate: "of the price",
    },
    "percent",
    [price],
    { kind: "percent", value: rate },
  );

/** What the customer pays on top of the price: taxable part, tax, price with tax; none without tax. */
export function chargedLines(
  charged: RollUpInput["salesTax"]["charged"],
  price: RollUpLine,
): readonly RollUpLine[] {
  if (charged === null) return [];
  const percentLine = (
    key: LineKey,
    label: string,
    rate: Percent,
    of: RollUpLine,
    what: string,
  ): RollUpLine =>
    lineOver(
      {
        key,
        group: "charged",
        label,
        words: `${percentText(rate)} of ${what}`,
        wordsByRate: `of ${what}`,
      },
      "percent",
      [of],
      { kind: "percent", value: rate },
    );
  const part = percentLine(
    lineKeys.taxable,
    "Taxable part of the price",
    charged.taxable,
    price,
    "the price",
  );
  const tax = percentLine(lineKeys.taxCharged, "Sales tax", charged.percent, part, "that part");
  const together = lineOver(
    {
      key: lineKeys.priceWithTax,
      group: "charged",
      label: "Price with tax",
      words: "price + sales tax",
    },
    "sum",
    [price, tax],
  );
  return [part, tax, together];
}
