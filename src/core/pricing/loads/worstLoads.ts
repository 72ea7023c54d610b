/** Of all the loads of an opening those that decide, and their verdicts in words. */
import type { MeasureStyle } from "../../measures/measures";
import { measureText } from "../../measures/writeMeasure";
import { measured, type LoadCheck, type LoadKind } from "./loadCheck";

/**
 * Of the checks of one kind the one that decides: the furthest over its capacity, else one whose load
 * is not known, else the nearest to its capacity, or the largest.
 */
export function worstOf(checks: readonly LoadCheck[], kind: LoadKind): LoadCheck | null {
  const weight = ({ load, capacity, verdict }: LoadCheck): number => {
    if (load === null) return 1;
    const share = capacity === null ? load / mostLoad : capacity === 0 ? mostLoad : load / capacity;
    return verdict === "over" ? 1 + share : Math.min(1, share) / 2;
  };
  return checks
    .filter((check) => check.kind === kind)
    .reduce<LoadCheck | null>(
      (worst, check) => (worst === null || weight(check) > weight(worst) ? check : worst),
      null,
    );
}

/** Beyond any load: orders loads that have no capacity to be a share of. */
const mostLoad = 1e9;

/** Decimals by which a load is shown. */
const places = {
  pounds: { lb: 1, "in-lb": 0, in: 3 },
  metric: { lb: 1, "in-lb": 1, in: 2 },
} as const satisfies Record<MeasureStyle, Record<LoadCheck["unit"], number>>;

/** Such as `57.4 lb`; `not known` for what could not be worked out. */
export const loadText = (
  load: number | null,
  unit: LoadCheck["unit"],
  style: MeasureStyle,
): string =>
  load === null ? "not known" : measureText(load, measured[unit], style, places[style][unit]);

/** Such as `over by 12.4 lb: 50 lb is entered`, or why nothing is checked. */
export function verdictWords(
  { kind, load, capacity, unit, verdict }: LoadCheck,
  style: MeasureStyle,
): string {
  if (capacity === null) return "not checked: no capacity is entered";
  // How far the track may sink is worked out from its span by what is entered.
  const what = kind === "deflection" ? "allowed by what is entered" : "entered";
  const entered = `${loadText(capacity, unit, style)} is ${what}`;
  if (load === null) return `not checked: the load is not known; ${entered}`;
  const apart = loadText(Math.abs(capacity - load), unit, style);
  return verdict === "over" ? `over by ${apart}: ${entered}` : `within by ${apart}: ${entered}`;
}
