/** Headings of a column of weights, with the unit that they name: `Weight (kg)`, `Wt., lb each`, `kg`. */
import type { CellValue } from "../core/base/cell";
import { headedWeightUnit } from "../core/pricing/itemWeight";

/** Words behind or before `weight` that name no unit. */
const notUnits = new Set(["", "each", "ea", "per unit", "per piece", "per pc", "unit", "approx"]);

/** Longer text is a notice. */
const longest = 60;

/** A heading that is nothing but a unit; other units are too short to tell what they head. */
const unitAlone = /^(lbs?|pounds?|kgs?|kilograms?|kilogrammes?)\.?( (each|per unit))?$/i;

/**
 * The unit that a heading of weights names, as typed: the empty text where it names none. `null` for
 * a heading of something else. A unit that stands apart, in brackets or behind a comma, need not be
 * known; one that does not, must be, since `Weight class` is no weight.
 */
export function weightUnitIn(heading: CellValue): string | null {
  if (typeof heading !== "string" || heading.length > longest) return null;
  const text = heading.normalize("NFKC").trim();
  if (unitAlone.test(text)) return text.split(" ")[0] ?? text;
  const found = /^(?:unit +|net +)?(?:weight|wt|mass)\b\.?(?: +(?:each|ea)\b)?(.*)$/is.exec(text);
  if (found === null) return null;
  const rest = (found[1] ?? "").trim();
  const words = rest.replace(/^[([,;:\s]+|[)\]\s]+$/g, "").replace(/^in +/i, "");
  if (notUnits.has(words.toLowerCase().replace(/\.$/, ""))) return "";
  const isApart = /^[([,;:]/.test(rest);
  const isKnown = headedWeightUnit({ value: words, place: null }) !== null;
  return isKnown || isApart ? words : null;
}

/** A heading of weights as the word alone; any other cell as it is. */
export const plainWeightHeading = (heading: CellValue): CellValue =>
  weightUnitIn(heading) === null ? heading : "Weight";
