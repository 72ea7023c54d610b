/** A chart: a look-up by one or two keys, such as a bracket by post height and door height. */
import type { CellPlace } from "../base/cell";

/** How a key is matched. `next up` takes the smallest number of the chart that is not below it. */
export const chartMatches = ["exact", "next up"] as const;
export type ChartMatch = (typeof chartMatches)[number];

/** A key or value of a chart: text, or a number (lengths in inches), or yes and no. */
export type ChartValue = string | number | boolean;

export type ChartEntry = {
  readonly down: ChartValue;
  /** `null` in a one-way chart. */
  readonly across: ChartValue | null;
  /** `null` where the row's value cannot be used: looking there finds nothing. */
  readonly value: ChartValue | null;
  readonly place: CellPlace | null;
  readonly basis: string;
};

export type Chart = {
  /** As first typed. */
  readonly name: string;
  readonly match: ChartMatch;
  readonly twoWay: boolean;
  readonly entries: readonly ChartEntry[];
};
