/** `CRIB.PLATE`: the kit book's chart of track plates, asked directly. */
import { err, ok, type Result } from "../core/base/result";
import { inches } from "../core/base/units";
import { normalName } from "../core/formulas/names";
import { chartLookup } from "../core/kitbook/chart";
import { toInches } from "../core/lengths/length";
import { readLength } from "../core/lengths/readLength";
import type { OpeningCounter } from "../app/openings/oneOpening";
import { oneValue, wrong } from "./openingArguments";
import type { FunctionAnswer, FunctionFault, FunctionInput } from "./worksheetFunction";

/** The chart by this name in any spelling. */
const chartName = "track_plate";

/** The plate for a post height and a door height; #N/A where the chart has none, or there is no chart. */
export function trackPlate(
  [post = null, door = null]: readonly FunctionInput[],
  { book, settings, showLength }: OpeningCounter,
): Result<FunctionAnswer, FunctionFault> {
  const heights: number[] = [];
  for (const [name, input] of [
    ["post_height", post],
    ["door_height", door],
  ] as const) {
    const value = oneValue(input);
    if (value === undefined) return err(wrong(name, "give it one cell or one value"));
    const read = readLength(value, settings.unit);
    if (!read.ok) return err({ code: "value", message: `${name}: ${read.error.message}` });
    // To the nearest sixteenth, as the starter book asks its chart: 2134 mm is 7 ft.
    heights.push(Math.round(toInches(read.value.length) * 16) / 16);
  }
  const chart = book.charts.find((each) => normalName(each.name) === chartName);
  if (chart === undefined) {
    return err({ code: "na", message: 'The kit book has no chart named "track plate".' });
  }
  const [down = 0, across = 0] = heights;
  const plate = chartLookup(chart)(down, across);
  if (plate !== undefined && plate !== null) return ok(plate);
  const sizes = `a post of ${showLength(inches(down))} and a door of ${showLength(inches(across))}`;
  return err({ code: "na", message: `The chart has no plate for ${sizes}.` });
}
