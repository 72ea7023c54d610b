/**
 * Markup and margin, which are never one word for both:
 * markup = profit / cost, margin = profit / price, profit = price - cost.
 */
import { roundedProduct } from "../base/exact";
import { cents, type Cents } from "../base/units";
import { millionths, percent, type Percent } from "./rates/percent";

export const markupFormula = "markup = profit / cost";
export const marginFormula = "margin = profit / price";

/** A price over its cost, in three ways. `null` where there is nothing to divide by. */
export type Profit = {
  readonly profit: Cents;
  /** As a spreadsheet keeps it: 0.25 is 25 %. */
  readonly markup: number | null;
  readonly margin: number | null;
};

export function profitOf(cost: Cents, price: Cents): Profit {
  const profit = cents(price - cost);
  return {
    profit,
    markup: cost === 0 ? null : profit / cost,
    margin: price === 0 ? null : profit / price,
  };
}

/** The margin that a markup comes to: 25 % on cost is 20 % of price. `markup` above -100 %. */
export const marginFromMarkup = (markup: Percent): Percent =>
  percent(roundedProduct(markup, millionths, millionths + markup));

/** The markup that a margin needs: 20 % of price is 25 % on cost. `margin` below 100 %. */
export const markupFromMargin = (margin: Percent): Percent =>
  percent(roundedProduct(margin, millionths, millionths - margin));

/**
 * The price that makes `markup` on the cost, where the cost still has to take in a `bond` that is a
 * percentage of that price: (1 + k) c / (1 - (1 + k) b). Rounded once, to the cent.
 */
export const priceByMarkup = (cost: Cents, markup: Percent, bond: Percent): Cents =>
  cents(
    roundedProduct(
      cost,
      (millionths + markup) * millionths,
      millionths ** 2 - (millionths + markup) * bond,
    ),
  );

/** The price of which `margin` is left: c / (1 - m - b), with the bond as in `priceByMarkup`. */
export const priceByMargin = (cost: Cents, margin: Percent, bond: Percent): Cents =>
  cents(roundedProduct(cost, millionths, millionths - margin - bond));

export const roundingWays = ["nearest", "up"] as const;

/** How a price is made a round one. `step` in whole currency units; 1 is to the unit, 0 leaves the cents. */
export type PriceRounding = {
  readonly step: number;
  readonly way: (typeof roundingWays)[number];
};

/** A rounded price; `nearest` takes a half up. Zero and exact multiples stay as they are. */
export function roundPrice(price: Cents, { step, way }: PriceRounding): Cents {
  if (step === 0) return price;
  const unit = step * 100;
  const times = way === "up" ? Math.ceil(price / unit) : roundedProduct(price, 1, unit);
  return cents(times * unit);
}
