/** What an owner thinks a figure may turn out to be: a range, its mean, and a random draw from it. */
import type { RandomNumbers } from "./randomNumbers";

/**
 * Figures are factors: 1 is as estimated, 1.1 is a tenth more. `low <= likely <= high`, and
 * `deviation` is zero or more; `rangeFault` says when they are not.
 */
export type Range =
  | { readonly kind: "fixed"; readonly value: number }
  /** Anything between is as likely. */
  | { readonly kind: "uniform"; readonly low: number; readonly high: number }
  | ThreePoints<"triangular">
  /** A beta curve with a = 1 + 4 (likely - low) / (high - low); thinner at both ends than a triangle. */
  | ThreePoints<"pert">
  /** The familiar bell; it has no ends, so a draw below zero is taken as zero. */
  | { readonly kind: "normal"; readonly mean: number; readonly deviation: number };

type ThreePoints<Kind extends string> = {
  readonly kind: Kind;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
};

/** What is wrong with a range as typed, in words, or `null`. */
export function rangeFault(range: Range): string | null {
  const numbers = Object.values(range).filter((value) => typeof value === "number");
  if (!numbers.every((value) => Number.isFinite(value) && value >= 0)) {
    return "every figure of a range must be a number from zero up";
  }
  if (range.kind === "uniform" && range.low > range.high)
    return "the low end is above the high end";
  if (range.kind === "triangular" || range.kind === "pert") {
    const inOrder = range.low <= range.likely && range.likely <= range.high;
    return inOrder ? null : "the likely figure must be between the low and the high end";
  }
  return null;
}

/** The mean in closed form. Of a normal range, before draws below zero are taken as zero. */
export function rangeMean(range: Range): number {
  switch (range.kind) {
    case "fixed":
      return range.value;
    case "uniform":
      return (range.low + range.high) / 2;
    case "triangular":
      return (range.low + range.likely + range.high) / 3;
    case "pert":
      return (range.low + 4 * range.likely + range.high) / 6;
    case "normal":
      return range.mean;
  }
}

/** A random figure of the range. A fixed one takes nothing from the stream. */
export function drawFrom(range: Range, random: RandomNumbers): number {
  switch (range.kind) {
    case "fixed":
      return range.value;
    case "uniform":
      return range.low + (range.high - range.low) * random.uniform();
    case "triangular":
      return triangular(range, random.uniform());
    case "pert":
      return pert(range, random);
    case "normal":
      return Math.max(0, range.mean + range.deviation * standardNormal(random));
  }
}

/** The inverse of a triangle's distribution at `share`, from 0 to 1. */
function triangular({ low, likely, high }: ThreePoints<"triangular">, share: number): number {
  const width = high - low;
  if (width === 0) return low;
  return share < (likely - low) / width
    ? low + Math.sqrt(share * width * (likely - low))
    : high - Math.sqrt((1 - share) * width * (high - likely));
}

function pert({ low, likely, high }: ThreePoints<"pert">, random: RandomNumbers): number {
  const width = high - low;
  if (width === 0) return low;
  const left = gamma(1 + (4 * (likely - low)) / width, random);
  const right = gamma(1 + (4 * (high - likely)) / width, random);
  return low + (width * left) / (left + right);
}

/** Box and Muller, 1958. One draw of two is used, so that the stream has no hidden state. */
const standardNormal = (random: RandomNumbers): number =>
  Math.sqrt(-2 * Math.log(1 - random.uniform())) * Math.cos(2 * Math.PI * random.uniform());

/** A gamma draw of `shape` >= 1. Source: G. Marsaglia and W. W. Tsang, ACM TOMS 26 (3), 2000. */
function gamma(shape: number, random: RandomNumbers): number {
  const scaled = shape - 1 / 3;
  const slope = 1 / Math.sqrt(9 * scaled);
  for (;;) {
    const normal = standardNormal(random);
    const cube = (1 + slope * normal) ** 3;
    if (cube <= 0) continue;
    const bound = normal ** 2 / 2 + scaled - scaled * cube + scaled * Math.log(cube);
    if (Math.log(1 - random.uniform()) < bound) return scaled * cube;
  }
}
