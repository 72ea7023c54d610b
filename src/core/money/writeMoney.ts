/** Money as text: for people in the currency's own way, for machines as decimal strings. */
import type { Cents, TenThousandths } from "../base/units";
import { unitCostPlaces, usDollar, type Currency } from "./currency";

/** `$1,234.50`, and `-$1,234.50` below zero. */
export const moneyText = (amount: Cents, currency = usDollar): string =>
  written(decimalText(amount, currency), currency);

/** `$0.0825`, `$1,234.50`: as many decimals as it needs, and as many as the currency has at least. */
export const unitCostText = (cost: TenThousandths, currency = usDollar): string =>
  written(unitCostDecimal(cost, currency), currency);

/** `1234.50`, whatever the currency's mark: the form of machine output. Never in exponents. */
export const decimalText = (amount: Cents, currency = usDollar): string =>
  pointed(amount, currency.digits);

/** `0.0825`, `1234.50`: the machine form of a unit cost. */
export function unitCostDecimal(cost: TenThousandths, currency = usDollar): string {
  const full = pointed(cost, unitCostPlaces);
  const spare = /0*$/.exec(full)?.[0].length ?? 0;
  const dropped = Math.min(spare, unitCostPlaces - currency.digits);
  const kept = full.slice(0, full.length - dropped);
  return kept.endsWith(".") ? kept.slice(0, -1) : kept;
}

/** In whole currency units, as the double nearest to it: what a spreadsheet cell holds. */
export const majorUnits = (amount: Cents, currency = usDollar): number =>
  amount / 10 ** currency.digits;

/** A unit cost in whole currency units, as the double nearest to it. */
export const unitCostNumber = (cost: TenThousandths): number => cost / 10 ** unitCostPlaces;

/** A whole number with a point put before its last `places` digits. */
function pointed(value: number, places: number): string {
  const digits = String(Math.abs(value)).padStart(places + 1, "0");
  const whole = digits.slice(0, digits.length - places);
  const sign = value < 0 ? "-" : "";
  return places === 0 ? sign + whole : `${sign}${whole}.${digits.slice(-places)}`;
}

function written(decimal: string, { sign, decimalMark }: Currency): string {
  const [whole = "", decimals] = decimal.replace("-", "").split(".");
  const thousandsMark = decimalMark === "." ? "," : ".";
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, thousandsMark);
  const minus = decimal.startsWith("-") ? "-" : "";
  return `${minus}${sign}${grouped}${decimals === undefined ? "" : decimalMark + decimals}`;
}
