/** Whole-number arithmetic with nothing lost on the way: `bigint` takes over where a double would not hold it. */

/** The largest whole number that divides both; `greatestCommonDivisor(0, n)` is `|n|`. Takes safe integers. */
export function greatestCommonDivisor(a: number, b: number): number {
  let [larger, smaller] = [Math.abs(a), Math.abs(b)];
  while (smaller !== 0) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}

/**
 * `a * b / divisor` rounded once to a whole number, a tie away from zero, as a spreadsheet's ROUND
 * does on the exact quotient. All three are safe integers and `divisor` is above zero.
 *
 * @throws RangeError when the rounded result is beyond what a double holds exactly.
 */
export function roundedProduct(a: number, b: number, divisor: number): number {
  const product = a * b;
  // Below 2^53 the product and its remainder are exact, and so is comparing twice the remainder.
  if (Number.isSafeInteger(product)) {
    const size = Math.abs(product);
    const remainder = size % divisor;
    const quotient = (size - remainder) / divisor;
    const rounded = remainder >= divisor - remainder ? quotient + 1 : quotient;
    return product < 0 && rounded > 0 ? -rounded : rounded;
  }
  const exact = BigInt(a) * BigInt(b);
  const size = exact < 0n ? -exact : exact;
  const rounded = Number((2n * size + BigInt(divisor)) / (2n * BigInt(divisor)));
  if (!Number.isSafeInteger(rounded)) {
    throw new RangeError(`Too large to hold exactly: ${a} x ${b} / ${divisor}`);
  }
  return exact < 0n ? -rounded : rounded;
}
