/**
 * Arithmetic on money. Amounts are whole minor units and each function rounds at most once, a tie
 * away from zero, as a spreadsheet's ROUND does, on the exact product.
 */
import { decimalOfNumber } from "../base/decimal";
import { roundedProduct } from "../base/exact";
import { cents, type Cents, type TenThousandths } from "../base/units";
import { unitCostPlaces, usDollar, type Currency } from "./currency";

/** Decimals to which a quantity or a percentage counts. */
const quantityPlaces = 6;

/**
 * The largest extended cost, in minor units: ten thousand million dollars. Nine thousand of them
 * still add up exactly, so a sum of checked lines does not overflow.
 */
export const largestAmount = 1e12;

/**
 * Whether `extend` takes the two: the quantity is finite and the cost within `largestAmount`. Ask
 * first where a person typed the quantity; `amount-too-large` is the finding for a no.
 */
export const canExtend = (
  quantity: number,
  unitCost: TenThousandths,
  currency = usDollar,
): boolean =>
  Math.abs(quantity) < 1e9 &&
  Math.abs(quantity) * unitCost <= largestAmount * 10 ** (unitCostPlaces - currency.digits);

/**
 * The cost of a quantity, rounded once to the currency's minor unit: ROUND(quantity * unit cost, 2).
 * The quantity counts to six decimals; below zero it is a credit.
 *
 * @throws RangeError when `canExtend` says no.
 */
export function extend(
  quantity: number,
  unitCost: TenThousandths,
  currency: Currency = usDollar,
): Cents {
  if (!canExtend(quantity, unitCost, currency)) {
    throw new RangeError(`Too large to extend: ${quantity} at ${unitCost}`);
  }
  return timesDecimal(unitCost, quantity, unitCostPlaces - currency.digits);
}

/**
 * So many percent of an amount: `percentOf(amount, 12.5)` is an eighth of it. The percentage counts
 * to six decimals.
 *
 * @throws RangeError when the percentage is not below a thousand million or the result is too large.
 */
export const percentOf = (amount: Cents, percent: number): Cents =>
  timesDecimal(amount, percent, 2);

/** The sum. No amounts make zero. @throws RangeError when it is beyond what a double holds exactly. */
export function sumOf(amounts: readonly Cents[]): Cents {
  let sum = 0;
  for (const amount of amounts) {
    sum += amount;
    // Past this a later amount could bring a wrong sum back into range.
    if (!Number.isSafeInteger(sum)) return exactSum(amounts);
  }
  return cents(sum);
}

const exactSum = (amounts: readonly Cents[]): Cents =>
  cents(Number(amounts.reduce((sum, amount) => sum + BigInt(amount), 0n)));

/** `value * factor / 10 ^ shift`, rounded. */
function timesDecimal(value: number, factor: number, shift: number): Cents {
  const decimal = decimalOfNumber(factor, quantityPlaces);
  if (decimal === null) throw new RangeError(`Not a number to multiply money by: ${factor}`);
  return cents(roundedProduct(value, decimal.coefficient, 10 ** (decimal.places + shift)));
}
