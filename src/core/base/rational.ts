/** Exact fractions of two safe integers, always in lowest terms with the denominator above zero. */
import { greatestCommonDivisor } from "./exact";

export type Rational = { readonly numerator: number; readonly denominator: number };

/**
 * The fraction in lowest terms.
 *
 * @throws RangeError when either number is no safe integer or `denominator` is not above zero.
 */
export function rational(numerator: number, denominator = 1): Rational {
  const sound =
    Number.isSafeInteger(numerator) && Number.isSafeInteger(denominator) && denominator > 0;
  if (!sound) throw new RangeError(`Not an exact fraction: ${numerator}/${denominator}`);
  const common = denominator === 1 ? 1 : greatestCommonDivisor(numerator, denominator);
  return { numerator: numerator / common, denominator: denominator / common };
}

/** @throws RangeError when the sum needs more than safe integers. */
export function addRational(a: Rational, b: Rational): Rational {
  const common = greatestCommonDivisor(a.denominator, b.denominator);
  const [widenA, widenB] = [b.denominator / common, a.denominator / common];
  return rational(a.numerator * widenA + b.numerator * widenB, a.denominator * widenA);
}

/** @throws RangeError when the product, in lowest terms, needs more than safe integers. */
export function multiplyRational(a: Rational, b: Rational): Rational {
  // Dividing out crosswise first keeps the products as small as they can be.
  const one = greatestCommonDivisor(a.numerator, b.denominator);
  const two = greatestCommonDivisor(b.numerator, a.denominator);
  return rational(
    (a.numerator / one) * (b.numerator / two),
    (a.denominator / two) * (b.denominator / one),
  );
}

/** The double nearest to the fraction: dividing two exactly held numbers rounds once, correctly. */
export const nearestNumber = ({ numerator, denominator }: Rational): number =>
  numerator / denominator;
