/**
 * The roll-up of a job: from its costs to its price, line by line.
 *
 * Direct costs, then overhead, contingency, tax paid and bond as percentages of what the firm says;
 * together they are the cost. The price comes from the cost by markup or by margin, or was typed,
 * and is made a round one. A bond that is a percentage of the price is part of the cost that the
 * price must cover; the price formula takes it in, so nothing goes round in a circle.
 */
import { cents, type Cents } from "../../base/units";
import { lineOver } from "./lineRules";
import { marginFormula, markupFormula, profitOf, type Profit } from "../margin";
import type { Percent } from "../rates/percent";
import { leastPercent, mostPercent } from "./priceRule";
import { costLines, directKey } from "./rollUpCosts";
import type { RollUpInput } from "./rollUpInput";
import type { LineKey, RollUpLine } from "./rollUpLine";
import { bondOnPrice, chargedLines, lineKeys, priceLines } from "./rollUpPrice";

/** Markup or margin: the amount of one line over that of another. */
export type RollUpRatio = {
  readonly label: "Markup" | "Margin";
  readonly part: LineKey;
  readonly whole: LineKey;
  readonly words: string;
  readonly value: number | null;
};

export type RollUp = Profit & {
  readonly job: string;
  /** In the order in which they are shown; keys are unique. */
  readonly lines: readonly RollUpLine[];
  /** Markup, then margin, each with its formula in words. */
  readonly ratios: readonly RollUpRatio[];
  readonly directCost: Cents;
  readonly cost: Cents;
  /** Before any tax that the customer pays on top. */
  readonly price: Cents;
  readonly taxCharged: Cents;
  readonly priceWithTax: Cents;
  /** What is not in the cost: where it is not empty, cost and price are only a least. */
  readonly notPriced: readonly string[];
};

/**
 * Rolls up one job.
 *
 * @throws RangeError when a percentage is outside what `readPricePercent` lets through, or a quantity at
 * a price is more than `canExtend` allows.
 */
export function rollUp(input: RollUpInput): RollUp {
  checkPercents(input);
  const { lines, parts, notPriced } = costLines(input);
  const bondRate = input.bond?.on === "price" ? input.bond.percent : null;
  const costOf = (of: readonly RollUpLine[], words: string): RollUpLine =>
    lineOver({ key: lineKeys.cost, group: "cost", label: "Cost", words }, "sum", of);

  // A bond on the price is in the cost, and the price must be known first.
  const before =
    bondRate === null
      ? costOf(parts, "direct cost and all that comes on it")
      : lineOver(
          {
            key: lineKeys.costBeforeBond,
            group: "cost",
            label: "Cost before bond",
            words: "direct cost and all that comes on it",
          },
          "sum",
          parts,
        );
  const { before: exact, price } = priceLines(input, before, bondRate);
  const bond = bondRate === null ? null : bondOnPrice(bondRate, price);
  const cost = bond === null ? before : costOf([before, bond], "cost before bond + bond");
  const profit = lineOver(
    { key: lineKeys.profit, group: "price", label: "Profit", words: "price - cost" },
    "less",
    [price],
    { kind: "none" },
    { key: lineKeys.cost, figure: cost.amount },
  );
  const charged = chargedLines(input.salesTax.charged, price);
  const all = [
    ...lines,
    ...(bond === null ? [cost] : [before, bond, cost]),
    ...exact,
    price,
    profit,
    ...charged,
  ];
  const made = profitOf(cost.amount, price.amount);
  const part = lineKeys.profit;
  return {
    job: input.job,
    lines: all,
    ratios: [
      { label: "Markup", part, whole: lineKeys.cost, words: markupFormula, value: made.markup },
      { label: "Margin", part, whole: lineKeys.price, words: marginFormula, value: made.margin },
    ],
    directCost: amountOf(all, directKey),
    cost: cost.amount,
    price: price.amount,
    ...made,
    taxCharged: charged.length === 0 ? cents(0) : amountOf(charged, lineKeys.taxCharged),
    priceWithTax: charged.length === 0 ? price.amount : amountOf(charged, lineKeys.priceWithTax),
    notPriced,
  };
}

/**
 * The amount of the line with that key.
 *
 * @throws RangeError when there is none.
 */
export function amountOf(lines: readonly RollUpLine[], key: LineKey): Cents {
  const line = lines.find((one) => one.key === key);
  if (line === undefined) throw new RangeError(`No such line: ${key}`);
  return line.amount;
}

function checkPercents({ price, bond }: RollUpInput): void {
  const inRange = (value: Percent, most: Percent, least: number): boolean =>
    value >= least && value <= most;
  const sound =
    (price.method === "typed" || inRange(price.percent, mostPercent[price.method], leastPercent)) &&
    (bond === null || inRange(bond.percent, mostPercent.bond, 0));
  if (!sound) throw new RangeError("A percentage of the price was not checked.");
}
