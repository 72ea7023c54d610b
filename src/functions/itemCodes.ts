/** The item codes of a kit book, as functions that ask about an item know them. */
import { onceForSame } from "../app/reading/onceForSame";
import { nearestName } from "../core/formulas/names";
import type { KitBook } from "../core/kitbook/kitBook";
import { itemKey } from "../core/pricing/item";
import { wrong } from "./openingArguments";
import type { FunctionFault } from "./worksheetFunction";

type ItemCodes = {
  /** As the book writes them, each once. */
  readonly codes: readonly string[];
  readonly keys: ReadonlySet<string>;
  /** Whether some row works its item's code out, so that any code may come of it. */
  readonly hasFreeFormula: boolean;
};

/** Thousands of cells ask by one book. */
const codesOf = onceForSame(({ types, charts }: KitBook): ItemCodes => {
  const parts = types.flatMap((type) => type.parts.map((part) => part.item));
  const codes = new Set([
    ...parts.flatMap((item) => (item.kind === "code" ? [item.code] : [])),
    ...charts.flatMap((chart) => chart.entries.map((entry) => String(entry.value))),
  ]);
  return {
    codes: [...codes],
    keys: new Set([...codes].map(itemKey)),
    hasFreeFormula: parts.some(
      (item) => item.kind === "formula" && !/CHART/i.test(item.formula.text),
    ),
  };
});

/** A code that no row of the book can name is a typing error, and not a count of zero. */
export function codeFault(code: string, book: KitBook): FunctionFault | null {
  if (code === "") return wrong("item", "it is blank");
  const { codes, keys, hasFreeFormula } = codesOf(book);
  if (keys.has(itemKey(code))) return null;
  const near = nearestName(code, codes);
  if (hasFreeFormula && near === undefined) return null;
  const hint = near === undefined ? "" : `; did you mean ${near}`;
  return wrong("item", `the kit book has no ${code}${hint}`);
}
