/** Adding money up. */
import { cents, type Cents } from "../base/units";

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
