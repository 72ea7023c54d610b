/** What moves a job's margin most: each factor by itself from its low to its high, widest first. */
import type { Cents } from "../../base/units";
import { noPercent, percent, type Percent } from "../rates/percent";
import type { RollUp } from "../rollup/rollUp";
import type { RollUpInput } from "../rollup/rollUpInput";
import {
  asEstimated,
  factorName,
  factorsOf,
  rollUpIf,
  withFactor,
  type Factor,
  type WhatIf,
} from "./whatIf";

/** How far a factor may move: from `low` to `high`, in percent of its figure. */
export type Swing = { readonly factor: Factor; readonly low: Percent; readonly high: Percent };

/** What one factor does to the margin while all others stay: a bar of the picture. */
export type SwingEffect = Swing & {
  readonly name: string;
  readonly profitAtLow: Cents;
  readonly profitAtHigh: Cents;
  /** `null` for a price of nothing. */
  readonly marginAtLow: number | null;
  readonly marginAtHigh: number | null;
  /** Between the two margins; zero or more. */
  readonly swing: number;
};

/**
 * Moves each factor by itself and tells what moves the margin most: the widest swing first, on a tie
 * in the order given.
 */
export function swingEffects(
  input: RollUpInput,
  base: RollUp,
  swings: readonly Swing[],
  from: WhatIf = asEstimated,
): readonly SwingEffect[] {
  return swings
    .map((swing): SwingEffect => {
      const low = rollUpIf(input, base, withFactor(from, swing.factor, swing.low));
      const high = rollUpIf(input, base, withFactor(from, swing.factor, swing.high));
      return {
        ...swing,
        name: factorName(swing.factor),
        profitAtLow: low.profit,
        profitAtHigh: high.profit,
        marginAtLow: low.margin,
        marginAtHigh: high.margin,
        swing: Math.abs((high.margin ?? 0) - (low.margin ?? 0)),
      };
    })
    .sort((a, b) => b.swing - a.swing);
}

/** The same swing both ways for every factor but the discount, which only goes one way. */
export const evenSwings = (input: RollUpInput, by: Percent): readonly Swing[] =>
  factorsOf(input).map((factor) => ({
    factor,
    low: factor.kind === "discount" ? noPercent : percent(0 - by),
    high: by,
  }));
