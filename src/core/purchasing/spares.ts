/** Spares: extra pieces, so that a dropped nut stops nobody. */
import { decimalOfNumber } from "../base/decimal";
import { pieces, type Pieces } from "../base/units";

/** `job`: reckoned for each job on its own count. `order`: reckoned once on the sum. */
export const sparesBases = ["job", "order"] as const;
export type SparesBasis = (typeof sparesBases)[number];

export type SparesRule = {
  /** Of the count, zero or more; six decimals count. */
  readonly percent: number;
  /** Never fewer than this where anything is counted. */
  readonly least: Pieces;
  readonly per: SparesBasis;
};

export const noSpares: SparesRule = { percent: 0, least: pieces(0), per: "job" };

/**
 * The percentage rounded up, and at least so many; none for a count of zero. Exact: 5 % of 140 is 7
 * and not the next whole number above 7.000000000000001.
 *
 * @throws RangeError when the percentage is below zero or not below a thousand million.
 */
export function sparesFor(quantity: Pieces, { percent, least }: SparesRule): Pieces {
  if (quantity === 0) return pieces(0);
  const decimal = decimalOfNumber(percent, 6);
  if (decimal === null || percent < 0) throw new RangeError(`Not a percentage: ${percent}`);
  const whole = 100n * 10n ** BigInt(decimal.places);
  const share = (BigInt(quantity) * BigInt(decimal.coefficient) + whole - 1n) / whole;
  return pieces(Math.max(Number(share), least));
}
