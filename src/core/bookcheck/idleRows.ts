/** Rows of the parts and limits that never do anything. */
import type {
  CompiledLimit,
  CompiledPart,
  KitBook,
  OpeningType,
  RowSource,
} from "../kitbook/kitBook";
import type { Steps } from "../base/steps";
import { reachOf, type Reach } from "./neverFires";
import { probeOpenings } from "./probeOpenings";
import { eachAt, rowOutcomes, speaksAt } from "./rowOutcomes";

/** Openings tried for each opening type. */
export const triesForEachType = 600;

export type IdleRow = {
  readonly source: RowSource;
  /** A part's item, or a limit's condition. */
  readonly what: string;
  /** The opening types that the row is for. */
  readonly types: readonly string[];
  /** Whether it is proven from the formulas; else it was only never seen in so many tries. */
  readonly isProven: boolean;
  readonly tries: number;
};

type Told = {
  readonly source: RowSource;
  readonly what: string;
  readonly types: string[];
  reach: Reach;
  tries: number;
};

/** Parts that no opening needs and limits that never speak, in the book's order. */
export function* findIdleRows(book: KitBook): Steps<readonly IdleRow[]> {
  const rows = new Map<string, Told>();
  for (const [index, type] of book.types.entries()) {
    const done = index / book.types.length;
    for (const { source, what, seen, row } of yield* triedRows(book, type, done)) {
      const key = `${source.section} ${source.number}`;
      const told = rows.get(key) ?? { source, what, types: [], reach: "never", tries: 0 };
      rows.set(key, told);
      told.types.push(type.name);
      told.tries += triesForEachType;
      if (told.reach === "can") continue;
      if (!seen) yield done;
      const reach = seen ? "can" : reachOfRow(book, type, row);
      // A row for several types is idle only where it is in all of them.
      if (reach !== "never") told.reach = reach;
    }
  }
  return [...rows.values()].flatMap(({ source, what, types, reach, tries }) =>
    reach === "can" ? [] : [{ source, what, types, isProven: reach === "never", tries }],
  );
}

type TriedRow = {
  readonly source: RowSource;
  readonly what: string;
  readonly seen: boolean;
  readonly row: CompiledPart | CompiledLimit;
};

/** Openings tried in one step. */
const triesAtOnce = 100;

function* triedRows(book: KitBook, type: OpeningType, done: number): Steps<readonly TriedRow[]> {
  const openings = probeOpenings(book, type, triesForEachType);
  const seen = new Set<CompiledPart | CompiledLimit>();
  for (let start = 0; start < openings.length; start += triesAtOnce) {
    yield done;
    const tried = openings.slice(start, start + triesAtOnce);
    const outcomes = rowOutcomes(book, type, tried, () => "");
    const isSeen = (does: (row: number) => boolean): boolean => tried.some((_, row) => does(row));
    for (const { column } of outcomes.parts) {
      if (isSeen((row) => eachAt(column, row) > 0)) seen.add(column.part);
    }
    for (const limit of outcomes.limits) {
      if (isSeen((row) => speaksAt(limit, row))) seen.add(limit.limit);
    }
  }
  return [
    ...type.parts.map((part) => ({
      source: part.source,
      what: part.item.kind === "code" ? part.item.code : part.item.formula.text,
      seen: seen.has(part),
      row: part,
    })),
    ...type.limits.map((limit) => ({
      source: limit.source,
      what: limit.when.text,
      seen: seen.has(limit),
      row: limit,
    })),
  ];
}

const reachOfRow = (book: KitBook, type: OpeningType, row: CompiledPart | CompiledLimit): Reach =>
  "quantity" in row
    ? reachOf(book, type, row.when, row.quantity)
    : reachOf(book, type, row.when, null);
