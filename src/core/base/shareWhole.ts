/** Sharing a whole number so that nothing is lost or made. */
import { decimalOfNumber } from "./decimal";

/** Decimals to which a weight counts. */
const weightPlaces = 6;

/**
 * `total` shared in proportion to `weights`, in their order; the shares add up to `total` exactly.
 *
 * Largest remainder: each share is first its exact part rounded towards zero, and the ones left
 * over go one each to the largest remainders. Equal remainders go to the larger weight, then to
 * the earlier of `names` (by character code), then to the earlier place. So with names that differ,
 * the order of the entries never matters to any of them; without names it does not matter to the
 * amounts handed out, only, among equal weights, to who gets the odd one.
 *
 * Weights count to six decimals. Where all are zero, all count alike. A total below zero is shared
 * as the same total above zero with the signs turned.
 *
 * @throws RangeError when `total` is no safe integer, when a weight is below zero or not below a
 * thousand million, when there is something and nobody to share it, or when there are names but not one for each weight.
 */
export function shareWhole(
  total: number,
  weights: readonly number[],
  names: readonly string[] = [],
): number[] {
  if (names.length > 0 && names.length !== weights.length) {
    throw new RangeError(`${names.length} names for ${weights.length} weights`);
  }
  if (!Number.isSafeInteger(total)) throw new RangeError(`Not a whole number: ${total}`);
  if (weights.length === 0 && total !== 0) throw new RangeError(`Nobody to share ${total}`);
  const exact = exactWeights(weights);
  const whole = exact.reduce((sum, weight) => sum + weight, 0n);
  const amount = BigInt(Math.abs(total));
  const entries = exact.map((weight, index) => ({
    index,
    weight,
    share: (amount * weight) / whole,
    remainder: (amount * weight) % whole,
    name: names[index] ?? "",
  }));
  const given = entries.reduce((sum, { share }) => sum + share, 0n);
  const lucky = new Set(
    entries
      .toSorted(
        (a, b) =>
          compare(b.remainder, a.remainder) ||
          compare(b.weight, a.weight) ||
          compare(a.name, b.name) ||
          a.index - b.index,
      )
      .slice(0, Number(amount - given))
      .map(({ index }) => index),
  );
  const sign = total < 0 ? -1 : 1;
  return entries.map(({ index, share }) => {
    const size = Number(share) + (lucky.has(index) ? 1 : 0);
    return size === 0 ? 0 : sign * size;
  });
}

function exactWeights(weights: readonly number[]): readonly bigint[] {
  const exact = weights.map((weight) => {
    const decimal = decimalOfNumber(weight, weightPlaces);
    if (decimal === null || weight < 0) throw new RangeError(`Not a weight to share by: ${weight}`);
    return BigInt(decimal.coefficient) * 10n ** BigInt(weightPlaces - decimal.places);
  });
  return exact.every((weight) => weight === 0n) ? exact.map(() => 1n) : exact;
}

const compare = <T extends bigint | string>(a: T, b: T): number => (a < b ? -1 : a > b ? 1 : 0);
