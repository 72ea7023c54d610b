/** The items that a book names, against the items table. */
import type { KitBook, RowSource } from "../kitbook/kitBook";
import { itemKey, type Item, type Items } from "../pricing/item";
import { possibleTexts } from "./possibleTexts";

export type NamedItem = {
  /** As the book first writes it. */
  readonly code: string;
  /** The rows of the parts that can count it, each once, in the book's order. */
  readonly rows: readonly RowSource[];
};

export type ItemCoverage = {
  readonly named: readonly NamedItem[];
  readonly notInTable: readonly NamedItem[];
  readonly withoutCost: readonly NamedItem[];
  readonly withoutWeight: readonly NamedItem[];
  /** Items that a person typed and no row of the book names; those of the starter were typed by nobody. */
  readonly neverNamed: readonly Item[];
  /** Rows whose formula may give further items, which cannot be told from the book. */
  readonly openRows: readonly RowSource[];
};

export function itemCoverage(book: KitBook, items: Items): ItemCoverage {
  const rows = new Map<string, { readonly code: string; readonly rows: Map<number, RowSource> }>();
  const openRows = new Map<number, RowSource>();
  for (const type of book.types) {
    for (const { item, source } of type.parts) {
      const found =
        item.kind === "code"
          ? { texts: [item.code], mayBeOthers: false }
          : possibleTexts(item.formula.compiled.formula.tree, type, book);
      if (found.mayBeOthers) openRows.set(source.number, source);
      for (const code of found.texts) {
        const entry = rows.get(itemKey(code)) ?? { code, rows: new Map<number, RowSource>() };
        entry.rows.set(source.number, source);
        rows.set(itemKey(code), entry);
      }
    }
  }
  const named = [...rows.values()].map((entry) => ({
    code: entry.code,
    rows: [...entry.rows.values()].toSorted((one, other) => one.number - other.number),
  }));
  const known = named.flatMap((item) => {
    const inTable = items.get(itemKey(item.code));
    return inTable === undefined ? [] : [{ item, inTable }];
  });
  return {
    named,
    notInTable: named.filter(({ code }) => !items.has(itemKey(code))),
    withoutCost: known.flatMap(({ item, inTable }) => (inTable.unitCost === null ? [item] : [])),
    withoutWeight: known.flatMap(({ item, inTable }) => (inTable.weight === null ? [item] : [])),
    neverNamed: [...items].flatMap(([key, item]) =>
      rows.has(key) || item.place === null ? [] : [item],
    ),
    openRows: [...openRows.values()],
  };
}
