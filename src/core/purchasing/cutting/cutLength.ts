/**
 * Lengths for the saw: whole steps of 1/8128 inch.
 *
 * One step goes 127 times into 1/64 in and 32 times into 0.1 mm (1 in = 25.4 mm exactly, NIST
 * SP 811), so every length that a rule or a tape of either kind can show is a whole number of
 * steps, and adding up a bar never rounds.
 */
import { inches, type Inches } from "../../base/units";

declare const unit: unique symbol;
/** A length in whole steps of 1/8128 inch, zero or more. */
export type CutLength = number & { readonly [unit]: "CutLength" };

const stepsPerInch = 8128;

/** Longer than any bar; sums of many stay far below 2^53. About 12 million inches. */
const longest = 1e11;

/** @throws RangeError when `steps` is not a whole number from zero up. */
export function cutLength(steps: number): CutLength {
  if (Number.isSafeInteger(steps) && steps >= 0 && steps <= longest) return steps as CutLength;
  throw new RangeError(`Not a length in steps of the saw: ${steps}`);
}

/**
 * The length in steps. One that lies between two steps (1/7 in) goes to the next step up, so that
 * a piece is never cut short, or for what is there to cut from to the next step down. One within a
 * thousandth of a step (3 nm) of a whole step is that step, which takes out the noise of a size
 * such as 2134 mm kept as inches to twelve digits.
 *
 * @throws RangeError when the length is negative.
 */
export function cutLengthOf(length: Inches, between: "up" | "down" = "up"): CutLength {
  const steps = length * stepsPerInch;
  const nearest = Math.round(steps);
  if (Math.abs(steps - nearest) <= 1e-3) return cutLength(nearest);
  return cutLength(between === "up" ? Math.ceil(steps) : Math.floor(steps));
}

/** The length in inches, as the double nearest to it. */
export const inchesOf = (length: CutLength): Inches => inches(length / stepsPerInch);
