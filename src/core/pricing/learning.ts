/**
 * Learning over repeats of the same opening: each doubling of the count lowers the time by one ratio.
 *
 * `rate` is that ratio: 0.9 is a ninety-percent curve, 1 is no learning. b = log2(rate), and the nth
 * repeat takes
 * - `unit`: the first one's time x n^b. Source: the unit theory (J. R. Crawford, 1944), as in the
 *   improvement-curve chapter of the US Contract Pricing Reference Guides, volume 2.
 * - `average`: what lets the average of the first n be the first one's time x n^b. Source: T. P.
 *   Wright, "Factors Affecting the Cost of Airplanes", Journal of the Aeronautical Sciences, 1936.
 */

export const learningModels = ["unit", "average"] as const;
export type LearningModel = (typeof learningModels)[number];

export type Learning = {
  readonly model: LearningModel;
  /** Above 0.5, where the average curve would have the second repeat take no time, up to 1. */
  readonly rate: number;
};

/**
 * How many times the first one's time all of `count` take together. Whole `count`, zero or more.
 * One is always 1; without learning it is `count`.
 */
export function timesTheFirst(count: number, learning: Learning | null): number {
  if (learning === null || count <= 1) return count;
  const exponent = Math.log2(learning.rate);
  if (learning.model === "average") return count * count ** exponent;
  let sum = 0;
  for (let repeat = 1; repeat <= count; repeat += 1) sum += repeat ** exponent;
  return sum;
}

/** What the nth repeat takes, as a share of the first. `repeat` from 1. */
export const shareOfTheFirst = (repeat: number, learning: Learning): number =>
  learning.model === "unit"
    ? repeat ** Math.log2(learning.rate)
    : timesTheFirst(repeat, learning) - timesTheFirst(repeat - 1, learning);

/** The curve in words, such as `90 % unit curve (Crawford)`. */
export const learningInWords = ({ model, rate }: Learning): string =>
  `${Number((rate * 100).toFixed(2))} % ` +
  (model === "unit" ? "unit curve (Crawford)" : "cumulative average curve (Wright)");
