/** Combinations of sizes for which a chart has no entry. */
import type { Inches } from "../base/units";
import { normalName } from "../formulas/names";
import type { ChartNode } from "../formulas/tree";
import { isFormulaError, type FormulaValue } from "../formulas/value";
import { chartLookup, type Chart, type ChartValue } from "../kitbook/chart";
import type { BookFormula, KitBook, OpeningType } from "../kitbook/kitBook";
import type { Opening } from "../openings/opening";
import { fieldsBehind } from "../takeoff/take";
import { workOutSizes } from "../takeoff/takeOffType";
import { withField } from "./boundaries";
import { formulasOf } from "../kitbook/typeFormulas";
import { nodesIn } from "./fieldChoices";
import { allLengths } from "./neverFires";
import { openingState } from "./openingState";
import { profileAt, sameOutcome, type Profile } from "./profile/profile";
import { typeProfiles } from "./profile/typeProfile";
import { rowOutcomes } from "./rowOutcomes";

export type ChartGap = {
  readonly type: string;
  readonly chart: string;
  readonly down: ChartValue;
  /** `null` in a one-way chart. */
  readonly across: ChartValue | null;
  /**
   * What carries the two values: a field's heading, or the book's own words where the field is not the
   * value itself; empty where that is no single field.
   */
  readonly downField: string;
  readonly acrossField: string;
  /** The limit that stops such an opening anyway, in its words; `null` where nothing else does. */
  readonly stoppedBy: string | null;
};

export type ChartUse = {
  readonly type: OpeningType;
  readonly formula: BookFormula;
  readonly node: ChartNode;
};

/** Values to look for besides the chart's own keys, by the name of the field that carries them. */
export type FurtherValues = Readonly<Record<string, readonly number[]>>;

/**
 * The combinations without an entry in a grid of the chart's own keys, of every whole foot between the
 * least and the largest of them, and of the further values. `opening` gives the fields that the chart
 * does not read. Nothing where the book has no such chart.
 */
export function chartGaps(
  book: KitBook,
  use: ChartUse,
  opening: Opening,
  show: (length: Inches) => string,
  further: FurtherValues = {},
): readonly ChartGap[] {
  const chart = book.charts.find(({ name }) => normalName(name) === normalName(use.node.chart));
  return chart === undefined ? [] : gapsOf(book, chart, use, opening, show, further);
}

/** Every look into a chart, once for each opening type and pair of values looked for. */
export function chartUses({ types }: KitBook): readonly ChartUse[] {
  return types.flatMap((type) => {
    const uses = new Map<string, ChartUse>();
    for (const formula of formulasOf(type)) {
      for (const node of nodesIn(formula.compiled.formula.tree)) {
        if (node.kind !== "chart") continue;
        const text = formula.compiled.text.slice(node.position, node.end).toLowerCase();
        if (!uses.has(text)) uses.set(text, { type, formula, node });
      }
    }
    return [...uses.values()];
  });
}

/** A value looked for, and the opening's field set so that the chart is asked for it. */
type Asked = { readonly key: ChartValue; readonly set: (opening: Opening) => Opening };

function gapsOf(
  book: KitBook,
  chart: Chart,
  use: ChartUse,
  opening: Opening,
  show: (length: Inches) => string,
  further: FurtherValues,
): readonly ChartGap[] {
  const { type, node } = use;
  const lookup = chartLookup(chart);
  const down = way(book, chart, use, "down", opening, further);
  const across = node.across === null ? null : way(book, chart, use, "across", opening, further);
  const pairs = down.asked.flatMap((first) =>
    (across?.asked ?? [null]).map((second) => ({ first, second })),
  );
  const missing = pairs.filter(
    ({ first, second }) => lookup(first.key, second?.key ?? null) === undefined,
  );
  const openings = missing.map(({ first, second }) => {
    const set = first.set(opening);
    return second === null ? set : second.set(set);
  });
  const outcomes = rowOutcomes(book, type, openings, show);
  return missing.map(({ first, second }, row) => ({
    type: type.name,
    chart: chart.name,
    down: first.key,
    across: second?.key ?? null,
    downField: down.label,
    acrossField: across?.label ?? "",
    stoppedBy:
      openingState(outcomes, row, show).limits.find(({ level }) => level === "stop")?.message ??
      null,
  }));
}

/** One way of a chart: the values to look for, and the field that carries them where there is just one. */
function way(
  book: KitBook,
  chart: Chart,
  { type, formula, node }: ChartUse,
  which: "down" | "across",
  opening: Opening,
  further: FurtherValues,
): { readonly label: string; readonly asked: readonly Asked[] } {
  const part = which === "down" ? node.down : node.across;
  const names = new Set(
    part === null
      ? []
      : [...nodesIn(part)].flatMap((inner) => (inner.kind === "name" ? [inner.name] : [])),
  );
  const slots = formula.compiled.columns
    .filter(({ name }) => names.has(name))
    .map(({ slot }) => slot);
  const fields = fieldsBehind({ type }, { ...formula, compiled: { ...formula.compiled, slots } });
  const [slot] = fields;
  const field = fields.length === 1 && slot !== undefined ? book.fields[slot] : undefined;
  const keys = keysOf(chart, which, field === undefined ? [] : (further[field.name] ?? []));
  if (part === null || slot === undefined || field === undefined) {
    return { label: "", asked: keys.map((key) => ({ key, set: (given) => given })) };
  }
  const { columns } = workOutSizes(book, type, [opening]);
  const values = columns.map((column): FormulaValue => column[0] ?? null);
  const profile = typeProfiles(book, type, values, slot, allLengths).ofNode(
    formula.compiled.text,
    part,
  );
  const wanted = keys.map((key) => ({
    key,
    value: typeof key === "number" ? valueFor(profile, key) : key,
  }));
  const isField = wanted.every(({ key, value }) => key === value);
  return {
    label: isField ? field.label : formula.compiled.text.slice(part.position, part.end),
    asked: wanted.map(({ key, value }) => ({
      key,
      set: (given) => withField(given, field.name, value),
    })),
  };
}

/** The chart's keys of one way, the whole feet between its lengths, and the further values. */
function keysOf(
  { entries }: Chart,
  which: "down" | "across",
  further: readonly number[],
): readonly ChartValue[] {
  const keys = [...new Set(entries.flatMap((entry) => entry[which] ?? []))];
  const numbers = keys.filter((key) => typeof key === "number");
  const texts = keys.filter((key) => typeof key !== "number");
  const least = Math.ceil(Math.min(...numbers) / 12);
  const most = Math.floor(Math.max(...numbers) / 12);
  // Keys that are no whole feet at all, such as a count of leaves, have nothing between them.
  const isInFeet = numbers.length > 1 && numbers.every((number) => number % 12 === 0);
  const feet = isInFeet
    ? Array.from({ length: most - least + 1 }, (_, index) => (least + index) * 12)
    : [];
  return [
    ...new Set([...numbers, ...feet, ...further].toSorted((one, other) => one - other)),
    ...texts,
  ];
}

/** A value of the field for which the chart is asked for `key`: the key itself where that is one. */
function valueFor(profile: Profile, key: number): number {
  const asks = (value: number): boolean => {
    const found = profileAt(profile, value);
    return found !== undefined && !isFormulaError(found) && sameOutcome(found, key);
  };
  if (asks(key)) return key;
  const { cuts, between } = profile;
  for (const [index, course] of between.entries()) {
    const from = cuts[index - 1] ?? allLengths.from;
    const to = cuts[index] ?? allLengths.to;
    const value = course.kind === "line" ? (key - course.atZero) / course.slope : (from + to) / 2;
    if (value > from && value < to && asks(value)) return value;
    if (asks(to)) return to;
  }
  return key;
}
