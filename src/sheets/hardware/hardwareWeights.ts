/**
 * Weights as a hardware sheet shows them: in pounds, or in kilograms where its lengths are metric.
 * A total adds up what its rows show.
 */
import { measureStyleOf } from "../../core/measures/measures";
import { shownAmount } from "../../core/measures/writeMeasure";
import type { MaterialLine } from "../../core/pricing/material";
import { numberText } from "../../core/takeoff/describe";
import type { HardwareLayout } from "./hardwareLayout";

/** Decimals of a kilogram, beyond what any scale shows and free of what converting leaves. */
const kilogramPlaces = 6;

/** What one unit of the line's item weighs; `null` where it is not known. */
export function shownWeightEach({ wish }: HardwareLayout, { item }: MaterialLine): number | null {
  const weight = item?.weight ?? null;
  const style = measureStyleOf(wish.lengths);
  if (weight === null || style === "pounds") return weight;
  return Number(shownAmount(weight, "weight", style).toFixed(kilogramPlaces));
}

/** What all of the line weighs, as the formula of its cell comes to. */
export function shownWeight(layout: HardwareLayout, line: MaterialLine): number | null {
  const each = shownWeightEach(layout, line);
  if (measureStyleOf(layout.wish.lengths) === "pounds" || each === null || line.weight === null)
    return line.weight;
  return Number(numberText(line.toOrder * (line.unitsEach ?? 0) * each));
}

/** Of the lines whose weight is known. */
export const shownWeightOf = (layout: HardwareLayout, lines: readonly MaterialLine[]): number =>
  lines.reduce((sum, line) => sum + (shownWeight(layout, line) ?? 0), 0);
