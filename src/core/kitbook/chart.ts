/** A chart: a look-up by one or two keys, such as a bracket by post height and door height. */
import type { CellPlace } from "../base/cell";
import type { ChartLookup } from "../formulas/formula";
import { snapped } from "../formulas/rounding";
import type { Value } from "../formulas/value";

/**
 * How a key is matched. `next up` takes, on each way, the smallest number of the chart that is not
 * below it. Text is always matched exactly, without case.
 */
export const chartMatches = ["exact", "next up"] as const;
export type ChartMatch = (typeof chartMatches)[number];

/** A key or value of a chart: text, or a number (lengths in inches), or yes and no. */
export type ChartValue = string | number | boolean;

export type ChartEntry = {
  readonly down: ChartValue;
  /** `null` in a one-way chart. */
  readonly across: ChartValue | null;
  /** `null` where the entry's value cannot be used: looking there finds nothing. */
  readonly value: ChartValue | null;
  readonly place: CellPlace | null;
  readonly basis: string;
};

export type Chart = {
  /** As first typed. */
  readonly name: string;
  readonly match: ChartMatch;
  readonly twoWay: boolean;
  /** No two have the same keys. */
  readonly entries: readonly ChartEntry[];
};

/**
 * The key under which a value is found. Numbers that a spreadsheet shows alike are the same key, and
 * so are texts that differ in case or spaces only. Yes and no are found as booleans and as words.
 */
export function chartKey(value: ChartValue): string | number {
  if (typeof value === "number") return snapped(value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  const text = value.trim().replace(/\s+/g, " ").toLowerCase();
  return text === "true" ? "yes" : text === "false" ? "no" : text;
}

/** Looks into the chart; a blank key, or one with no entry, finds nothing. */
export function chartLookup(chart: Chart): ChartLookup {
  const rows = new Map<Key, Map<Key | null, ChartValue>>();
  const acrossKeys: Key[] = [];
  for (const { down, across, value } of chart.entries) {
    const downKey = chartKey(down);
    const acrossKey = across === null ? null : chartKey(across);
    const row = rows.get(downKey) ?? new Map<Key | null, ChartValue>();
    rows.set(downKey, row);
    if (acrossKey !== null) acrossKeys.push(acrossKey);
    if (value !== null) row.set(acrossKey, value);
  }
  const findDown = keyFinder(chart.match, [...rows.keys()]);
  const findAcross = keyFinder(chart.match, acrossKeys);
  return (down, across) => {
    const row = rows.get(findDown(down) ?? noKey);
    return row?.get(chart.twoWay ? (findAcross(across) ?? noKey) : null);
  };
}

type Key = string | number;

/** Under which nothing is kept: a key never is not-a-number. */
const noKey = Number.NaN;

/** Finds the key of the chart that stands for a value; `undefined` where none does. */
function keyFinder(match: ChartMatch, keys: readonly Key[]): (value: Value) => Key | undefined {
  const ascending = [...new Set(keys)]
    .filter((key) => typeof key === "number")
    .sort((a, b) => a - b);
  return (value) => {
    if (value === null) return undefined;
    const key = chartKey(value);
    if (match === "exact" || typeof key === "string") return key;
    return ascending.find((number) => number >= key);
  };
}
