/** What a kit book covers and what it leaves open: combinations, items, rows, sizes, charts. */
import type { Inches } from "../base/units";
import { normalName } from "../formulas/names";
import type { KitBook, OpeningType, RowSource } from "../kitbook/kitBook";
import type { Opening } from "../openings/opening";
import type { Items } from "../pricing/item";
import { chartGaps, chartUses, type ChartGap, type FurtherValues } from "./chartGaps";
import { formulasOf, slotsSaidBy } from "../kitbook/typeFormulas";
import { idleRows, type IdleRow } from "./idleRows";
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

export function coverageOf({ book, items, show, openings, further }: CoverageQuestion): Coverage {
  const usedCharts = new Set(chartUses(book).map(({ node }) => normalName(node.chart)));
  return {
    gaps: chartGaps(
      book,
      (type) => openings?.get(type.name) ?? countedOpening(book, type),
      show,
      further,
    ),
    items: itemCoverage(book, items),
    idle: idleRows(book),
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
