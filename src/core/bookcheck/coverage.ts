/** What a kit book covers and what it leaves open: combinations, items, rows, sizes, charts. */
import { between, finish, type Steps } from "../base/steps";
import type { Inches } from "../base/units";
import { normalName } from "../formulas/names";
import type { KitBook, OpeningType, RowSource } from "../kitbook/kitBook";
import type { Opening } from "../openings/opening";
import type { Items } from "../pricing/item";
import { chartGaps, chartUses, type ChartGap, type FurtherValues } from "./chartGaps";
import { formulasOf, slotsSaidBy } from "../kitbook/typeFormulas";
import { findIdleRows, type IdleRow } from "./idleRows";
import { itemCoverage, type ItemCoverage } from "./namedItems";
import { countedOpening } from "./probeOpenings";

export type UnusedSize = { readonly source: RowSource; readonly name: string };

export type Coverage = {
  readonly gaps: readonly ChartGap[];
  readonly items: ItemCoverage;
  readonly idle: readonly IdleRow[];
  /** Sizes that no other row of the book reads. */
  readonly unusedSizes: readonly UnusedSize[];
  readonly unusedCharts: readonly string[];
  readonly typesWithoutParts: readonly string[];
};

export type CoverageQuestion = {
  readonly book: KitBook;
  readonly items: Items;
  readonly show: (length: Inches) => string;
  /** Openings that give the fields a chart does not read, by opening type; made up where there is none. */
  readonly openings?: ReadonlyMap<string, Opening>;
  readonly further?: FurtherValues;
};

/** Everything at once. */
export const coverageOf = (question: CoverageQuestion): Coverage => finish(coverInSteps(question));

/** A chart of an opening type, or some openings tried, a step. */
export function* coverInSteps({
  book,
  items,
  show,
  openings,
  further,
}: CoverageQuestion): Steps<Coverage> {
  const uses = chartUses(book);
  const gaps: ChartGap[] = [];
  const madeUp = new Map<OpeningType, Opening>();
  for (const [index, use] of uses.entries()) {
    yield (0.5 * index) / uses.length;
    const opening =
      openings?.get(use.type.name) ?? madeUp.get(use.type) ?? countedOpening(book, use.type);
    madeUp.set(use.type, opening);
    yield (0.5 * index) / uses.length;
    gaps.push(...chartGaps(book, use, opening, show, further));
  }
  const idle = yield* between(0.5, 1, findIdleRows(book));
  const usedCharts = new Set(uses.map(({ node }) => normalName(node.chart)));
  return {
    gaps,
    items: itemCoverage(book, items),
    idle,
    unusedSizes: unusedSizes(book.types),
    unusedCharts: book.charts
      .map(({ name }) => name)
      .filter((name) => !usedCharts.has(normalName(name))),
    typesWithoutParts: book.types.filter(({ parts }) => parts.length === 0).map(({ name }) => name),
  };
}

function unusedSizes(types: readonly OpeningType[]): readonly UnusedSize[] {
  const used = new Map<number, boolean>();
  const sizes = new Map<number, UnusedSize>();
  for (const type of types) {
    const read = new Set([
      ...formulasOf(type).flatMap(({ compiled }) => compiled.slots),
      ...slotsSaidBy(type),
    ]);
    for (const { source, name, slot } of type.sizes) {
      sizes.set(source.number, { source, name });
      used.set(source.number, used.get(source.number) === true || read.has(slot));
    }
  }
  return [...sizes.values()]
    .filter(({ source }) => used.get(source.number) === false)
    .toSorted((one, other) => one.source.number - other.source.number);
}
