/** What is different between two kit books, row by row and cell by cell. */
import type { TypedCell } from "../base/cell";
import { between, finish, type Steps } from "../base/steps";
import { kitBookSections, type KitBookRows, type KitBookSection } from "../kitbook/rows";
import { cellWords, columnsOf, matchInSteps, rowsOf, type BookRow } from "./matchRows";

export type CellChange = {
  readonly column: string;
  readonly before: TypedCell;
  readonly after: TypedCell;
};

/** A row that is in one of the books only, or not the same in both. */
export type RowChange = {
  readonly section: KitBookSection;
  readonly kind: "added" | "removed" | "changed";
  /** What the row is about, such as `Sliding door, Leaf: SPLICE`. */
  readonly what: string;
  /** The row's number in its section of the first book, from 1; `null` where it is not in it. */
  readonly before: number | null;
  /** In the second book. */
  readonly after: number | null;
  /** Cells that differ; for a row that is added or removed, all that hold anything. */
  readonly cells: readonly CellChange[];
};

const nothing: TypedCell = { value: null, place: null };

/**
 * The changes from `before` to `after`, by section, in the order of the second book, rows that are gone
 * where they were. Nothing for two books that say the same. The order of rows by itself is no change.
 */
export const compareBooks = (before: KitBookRows, after: KitBookRows): readonly RowChange[] =>
  finish(compareBooksInSteps(before, after));

const rowsInStep = 200;

/** The same, some rows a step. */
export function* compareBooksInSteps(
  before: KitBookRows,
  after: KitBookRows,
): Steps<readonly RowChange[]> {
  let all: readonly RowChange[] = [];
  for (const [nth, section] of kitBookSections.entries()) {
    const old = rowsOf(before, section);
    const now = rowsOf(after, section);
    const start = nth / kitBookSections.length;
    const half = start + 0.5 / kitBookSections.length;
    const pairs = yield* between(start, half, matchInSteps(section, old, now));
    const changes: RowChange[] = [];
    for (const [index, pair] of pairs.entries()) {
      if (index % rowsInStep === 0) yield half;
      const first = pair.before === null ? null : (old[pair.before] ?? null);
      const second = pair.after === null ? null : (now[pair.after] ?? null);
      const cells = cellChanges(section, first, second);
      if (first !== null && second !== null && cells.length === 0) continue;
      changes.push({
        section,
        kind: first === null ? "added" : second === null ? "removed" : "changed",
        what: describeRow(section, second ?? first ?? {}),
        before: pair.before === null ? null : pair.before + 1,
        after: pair.after === null ? null : pair.after + 1,
        cells,
      });
    }
    all = [...all, ...changes.toSorted((one, other) => placeOf(one) - placeOf(other))];
  }
  return all;
}

const placeOf = ({ before, after }: RowChange): number => after ?? (before ?? 0) - 0.5;

function cellChanges(
  section: KitBookSection,
  first: BookRow | null,
  second: BookRow | null,
): readonly CellChange[] {
  return columnsOf(section).flatMap((column) => {
    const before = first?.[column] ?? nothing;
    const after = second?.[column] ?? nothing;
    return cellWords(before) === cellWords(after) ? [] : [{ column, before, after }];
  });
}

/** What a row is about in a few words. */
export function describeRow(section: KitBookSection, row: BookRow): string {
  const words = (column: string): string => cellWords(row[column]);
  switch (section) {
    case "sizes":
      return `${words("type")}: ${words("name")}`;
    case "parts":
      return `${[words("type"), words("bag")].filter((part) => part !== "").join(", ")}: ${words("item")}`;
    case "limits":
      return `${words("type")}: ${words("when")}`;
    case "charts":
      return `${words("chart")}: ${[words("down"), words("across")].filter((key) => key !== "").join(" by ")}`;
  }
}
