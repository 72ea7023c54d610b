/** The price that keeps a target margin, and the discount that loses it: each the other's exact inverse. */
import { roundedProduct } from "../base/exact";
import { cents, type Cents } from "../base/units";
import { percentOf } from "../money/amounts";
import { inPercent, millionths, noPercent, percent, type Percent } from "./rates/percent";
import type { RollUp } from "./rollup/rollUp";
import { lineKeys } from "./rollup/rollUpPrice";

/** A job's cost as its price moves: all that does not depend on the price, and a bond that does. */
export type CostByPrice = { readonly fixed: Cents; readonly bondOnPrice: Percent };

export function costByPrice(rolled: RollUp): CostByPrice {
  const bond = rolled.lines.find(({ key }) => key === lineKeys.bond);
  const isOnPrice = bond?.base.kind === "lines" && bond.base.of.includes(lineKeys.price);
  return isOnPrice && bond.rate.kind === "percent"
    ? { fixed: cents(rolled.cost - bond.amount), bondOnPrice: bond.rate.value }
    : { fixed: rolled.cost, bondOnPrice: noPercent };
}

/** The cost at a price. */
export const costAt = ({ fixed, bondOnPrice }: CostByPrice, price: Cents): Cents =>
  cents(fixed + percentOf(price, inPercent(bondOnPrice)));

/** Whether the margin at that price is the target or more, to the cent and without rounding. */
export function keepsTarget(cost: CostByPrice, price: Cents, target: Percent): boolean {
  const profit = price - costAt(cost, price);
  return BigInt(profit) * BigInt(millionths) >= BigInt(target) * BigInt(price);
}

/**
 * The least price in cents from which on every price keeps the target. A cost of nothing or less is
 * kept by any price, so by zero. `target` and the bond within what `readPricePercent` lets through.
 */
export function priceThatKeeps(cost: CostByPrice, target: Percent): Cents {
  if (cost.fixed <= 0) return cents(0);
  const left = millionths - target - cost.bondOnPrice;
  // One cent more than any rounding of the bond can take; then down while the target is kept.
  let price = cents(roundedProduct(cost.fixed + 1, millionths, left) + 1);
  while (price > 0 && keepsTarget(cost, cents(price - 1), target)) price = cents(price - 1);
  return price;
}

/** What may be given away. */
export type Discount = {
  /** The price that is left. */
  readonly price: Cents;
  /** Below zero where the price does not keep the target now: so much must be added. */
  readonly amount: Cents;
  /** Of the price now, down to a ten-thousandth of a percent; `null` for a price of nothing. */
  readonly percent: Percent | null;
};

/** The largest discount on `price` that keeps the target: a cent more loses it. */
export function discountThatKeeps(cost: CostByPrice, price: Cents, target: Percent): Discount {
  const least = priceThatKeeps(cost, target);
  const amount = cents(price - least);
  return {
    price: least,
    amount,
    percent: price <= 0 ? null : roundedDown(amount, price),
  };
}

function roundedDown(part: Cents, whole: Cents): Percent {
  const [scaled, of] = [BigInt(part) * BigInt(millionths), BigInt(whole)];
  const towardsZero = scaled / of;
  return percent(Number(scaled < 0n && scaled % of !== 0n ? towardsZero - 1n : towardsZero));
}

/** The price after a discount in percent, rounded to the cent. */
export const discounted = (price: Cents, discount: Percent): Cents =>
  cents(price - percentOf(price, inPercent(discount)));
