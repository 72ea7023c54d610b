/** Shares, gaps and changes as the views of prices write them. */
import { percentText, type Percent } from "../../core/pricing/rates/percent";

/** `24.1 %`, of 0.2408; `none` where there was nothing to divide by. */
export function shareWords(share: number | null, places = 1): string {
  if (share === null) return "none";
  const text = (share * 100).toFixed(places);
  // A hair below zero is no minus.
  return `${Number(text) === 0 ? text.replace("-", "") : text} %`;
}

/** A typed percentage as it was typed, such as `24 %`. */
export const typedWords = (percent: Percent): string => percentText(percent);

/** How far a margin is from its target, in percentage points: `2.4 points below`. */
export function gapWords(gap: number | null): string {
  if (gap === null) return "no margin";
  const points = Math.abs(gap * 100);
  const text = points.toFixed(1);
  // A millionth of a percent is how finely a percentage is kept.
  if (points < 1e-6) return "on target";
  const size = text === "0.0" ? "less than 0.1" : text;
  return `${size} points ${gap < 0 ? "below" : "above"}`;
}

/** A change with its sign: `+5 %`, `-3 %`, `0 %`. */
export const changeWords = (change: Percent): string =>
  change > 0 ? `+${percentText(change)}` : percentText(change);

/** A difference of two shares in points, with its sign: `-1.3 points`. */
export function pointsWords(from: number | null, to: number | null): string {
  if (from === null || to === null) return "";
  const text = ((to - from) * 100).toFixed(1);
  if (Number(text) === 0) return "0.0 points";
  return `${to > from ? "+" : ""}${text} points`;
}
