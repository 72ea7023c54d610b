/** Which rows of two kit books are the same row: first those that are alike, then by what they are about. */
import { finish, type Steps } from "../base/steps";
import { cellText, type TypedCell } from "../base/cell";
import { normalName } from "../formulas/names";
import { typeKey } from "../kitbook/kitBook";
import { sectionColumns, type KitBookRows, type KitBookSection } from "../kitbook/rows";

/** A row of any section by its columns. */
export type BookRow = Readonly<Record<string, TypedCell>>;

export type RowPair = {
  /** `null` where only the second book has the row. */
  readonly before: number | null;
  /** `null` where only the first book has it. */
  readonly after: number | null;
};

/** What a cell says, however it was typed: `3` and `"3"` are alike, and so are texts with other spaces. */
export const cellWords = (cell: TypedCell | undefined): string =>
  cell === undefined ? "" : cellText(cell.value).trim().replace(/\s+/g, " ");

export const columnsOf = (section: KitBookSection): readonly string[] => sectionColumns[section];

export const rowsOf = (rows: KitBookRows, section: KitBookSection): readonly BookRow[] =>
  rows[section];

/** Opening types in any order and spelling: `Sliding door, Hinged door`. */
const typesWords = (cell: TypedCell | undefined): string =>
  cellWords(cell)
    .split(",")
    .map((name) => (name.trim() === "*" ? "*" : typeKey(name)))
    .toSorted()
    .join(", ");

type Identity = (row: BookRow) => readonly string[];

const by =
  (...columns: readonly string[]): Identity =>
  (row) =>
    columns.map((column) => {
      const cell = row[column];
      if (column === "type") return typesWords(cell);
      return column === "name" || column === "chart"
        ? normalName(cellWords(cell))
        : cellWords(cell).toLowerCase();
    });

/** What a row is about, the closest likeness first. */
const identities: Readonly<Record<KitBookSection, readonly Identity[]>> = {
  sizes: [by("type", "name")],
  parts: [
    by("type", "bag", "step", "item", "size", "cutLength", "when"),
    by("type", "bag", "item", "when"),
    by("type", "bag", "item"),
    by("type", "item"),
  ],
  limits: [by("type", "when"), by("type", "message")],
  charts: [by("chart", "down", "across")],
};

/**
 * Pairs the rows of a section, each at most once. Of several rows about the same thing the first goes
 * with the first, the second with the second. Which book comes first makes no difference to who is paired.
 */
export const matchRows = (
  section: KitBookSection,
  before: readonly BookRow[],
  after: readonly BookRow[],
): readonly RowPair[] => finish(matchInSteps(section, before, after));

const rowsInStep = 200;

/** The same, some rows a step. */
export function* matchInSteps(
  section: KitBookSection,
  before: readonly BookRow[],
  after: readonly BookRow[],
): Steps<readonly RowPair[]> {
  const partner = new Map<number, number>();
  const taken = new Set<number>();
  const whole: Identity = (row) => columnsOf(section).map((column) => cellWords(row[column]));
  const ways = [whole, ...identities[section]];
  for (const [way, identity] of ways.entries()) {
    const waiting = new Map<string, number[]>();
    for (const [index, row] of after.entries()) {
      if (index % rowsInStep === 0) yield way / ways.length;
      if (taken.has(index)) continue;
      const key = JSON.stringify(identity(row));
      const same = waiting.get(key);
      if (same === undefined) waiting.set(key, [index]);
      else same.push(index);
    }
    for (const [index, row] of before.entries()) {
      if (index % rowsInStep === 0) yield (way + 0.5) / ways.length;
      if (partner.has(index)) continue;
      const found = waiting.get(JSON.stringify(identity(row)))?.shift();
      if (found === undefined) continue;
      partner.set(index, found);
      taken.add(found);
    }
  }
  return [
    ...before.map((_, index) => ({ before: index, after: partner.get(index) ?? null })),
    ...after.flatMap((_, index) => (taken.has(index) ? [] : [{ before: null, after: index }])),
  ];
}
