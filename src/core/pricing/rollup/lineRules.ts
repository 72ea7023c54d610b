/**
 * How the amount of a roll-up line is worked out.
 *
 * One table says for each rule what it comes to exactly and the spreadsheet formula that comes to the
 * same, so that the sheet and the core cannot drift apart. Every amount is rounded once, to the cent,
 * a half away from zero, as the sheet's ROUND does.
 */
import { cents, type Cents } from "../../base/units";
import { extend, percentOf, sumOf } from "../../money/amounts";
import { priceByMargin, priceByMarkup, roundPrice } from "../margin";
import { inPercent, noPercent, percent, type Percent } from "../rates/percent";
import type { LineBase, LineGroup, LineKey, LineRate, LineRule, RollUpLine } from "./rollUpLine";

/** Where the figures of a line stand on a sheet: cell references such as `$C$7`. */
export type LineCells = {
  readonly base: string;
  readonly rate: string;
  /** The other line's cell, or `null` where the line has none. */
  readonly other: string | null;
};

type Figures = {
  readonly base: LineBase;
  readonly rate: LineRate;
  /** The bond's percentage for `markup` and `margin`; the amount taken away for `less`. */
  readonly other: number;
};

type RuleMeaning = {
  readonly amount: (figures: Figures) => Cents;
  /** Starts with `=`. */
  readonly formula: (cells: LineCells) => string;
};

const moneyIn = (base: LineBase): Cents => (base.kind === "lines" ? base.value : cents(0));
const percentIn = (rate: LineRate): Percent => (rate.kind === "percent" ? rate.value : noPercent);
const stepIn = (rate: LineRate): number => (rate.kind === "step" ? rate.value : 0);

/** The rules that work an amount out; a typed amount has none. */
export const lineRules: Readonly<Record<Exclude<LineRule, "typed">, RuleMeaning>> = {
  sum: {
    amount: ({ base }) => moneyIn(base),
    formula: ({ base }) => `=${base}`,
  },
  quantity: {
    amount: ({ base, rate }) =>
      base.kind === "quantity" && rate.kind === "each" ? extend(base.value, rate.value) : cents(0),
    formula: ({ base, rate }) => `=ROUND(${base}*${rate},2)`,
  },
  percent: {
    amount: ({ base, rate }) => percentOf(moneyIn(base), inPercent(percentIn(rate))),
    formula: ({ base, rate }) => `=ROUND(${base}*${rate},2)`,
  },
  markup: {
    amount: ({ base, rate, other }) =>
      priceByMarkup(moneyIn(base), percentIn(rate), percent(other)),
    formula: ({ base, rate, other }) =>
      other === null
        ? `=ROUND(${base}*(1+${rate}),2)`
        : `=ROUND(${base}*(1+${rate})/(1-(1+${rate})*${other}),2)`,
  },
  margin: {
    amount: ({ base, rate, other }) =>
      priceByMargin(moneyIn(base), percentIn(rate), percent(other)),
    formula: ({ base, rate, other }) =>
      other === null ? `=ROUND(${base}/(1-${rate}),2)` : `=ROUND(${base}/(1-${rate}-${other}),2)`,
  },
  nearest: {
    amount: ({ base, rate }) => roundPrice(moneyIn(base), { step: stepIn(rate), way: "nearest" }),
    formula: ({ base, rate }) => `=ROUND(${base}/${rate},0)*${rate}`,
  },
  up: {
    amount: ({ base, rate }) => roundPrice(moneyIn(base), { step: stepIn(rate), way: "up" }),
    formula: ({ base, rate }) => `=ROUNDUP(${base}/${rate},0)*${rate}`,
  },
  less: {
    amount: ({ base, other }) => cents(moneyIn(base) - other),
    formula: ({ base, other }) => `=ROUND(${base}-${other ?? "0"},2)`,
  },
};

/**
 * The formula of a line's base cell, or `null` where the base is a plain value: a quantity, or the
 * sum of no lines. `amountCell` gives the cell of another line's amount.
 */
export function baseFormula(base: LineBase, amountCell: (line: LineKey) => string): string | null {
  if (base.kind !== "lines" || base.of.length === 0) return null;
  // Doubles leave a little of a cent behind when they add, and a price rounded up would see it.
  return `=ROUND(SUM(${base.of.map(amountCell).join(",")}),2)`;
}

/** The formula of a ratio's cell: blank where there is nothing to divide by. */
export const ratioFormula = (part: string, whole: string): string =>
  `=IF(${whole}=0,"",${part}/${whole})`;

/** The formula of a line's amount cell, or `null` where the amount is typed. */
export const amountFormula = (line: RollUpLine, cells: LineCells): string | null =>
  line.rule === "typed" ? null : lineRules[line.rule].formula(cells);

type LinePart = {
  readonly key: LineKey;
  readonly group: LineGroup;
  readonly label: string;
  readonly words: string;
  readonly wordsByRate?: string;
};

const none = { kind: "none" } as const;

/** A line whose amount was typed or comes from another sheet. */
export const typedLine = (part: LinePart, amount: Cents): RollUpLine => ({
  ...part,
  rule: "typed",
  base: none,
  rate: none,
  other: null,
  amount,
});

/** A line of so many units at a price for each. */
export function quantityLine(
  part: LinePart,
  base: Extract<LineBase, { kind: "quantity" }>,
  rate: Extract<LineRate, { kind: "each" }>,
): RollUpLine {
  const amount = lineRules.quantity.amount({ base, rate, other: 0 });
  return { ...part, rule: "quantity", base, rate, other: null, amount };
}

/** A line worked out from the sum of other lines. `figure` is the other line's, as `Figures` says. */
export function lineOver(
  part: LinePart,
  rule: Exclude<LineRule, "typed" | "quantity">,
  lines: readonly RollUpLine[],
  rate: LineRate = none,
  other: { readonly key: LineKey; readonly figure: number } | null = null,
): RollUpLine {
  const base = {
    kind: "lines",
    of: lines.map(({ key }) => key),
    value: sumOf(lines.map(({ amount }) => amount)),
  } as const;
  const amount = lineRules[rule].amount({ base, rate, other: other?.figure ?? 0 });
  return { ...part, rule, base, rate, other: other?.key ?? null, amount };
}
