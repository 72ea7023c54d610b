/** The counts of a line by the kit-book row that asks for them. */
import { pieces, type Pieces } from "../../core/base/units";
import type { CompiledPart } from "../../core/kitbook/kitBook";
import { quantityOf } from "../../core/takeoff/explain";
import { countsIn, type Count, type CountColumn } from "../../core/takeoff/take";

export type PartGroup = {
  readonly part: CompiledPart;
  readonly counts: readonly Count[];
  readonly quantity: Pieces;
};

type Draft = { readonly part: CompiledPart; readonly counts: Count[]; quantity: number };

/** In the order of the kit book's rows; counts in the order of the schedule. */
export function partGroups(columns: readonly CountColumn[]): readonly PartGroup[] {
  const groups = new Map<string, Draft>();
  for (const count of countsIn(columns)) {
    const { part, take } = count;
    // A part that serves several opening types is one row of the book for each of them.
    const key = `${part.source.number}
${take.type.name}`;
    const group: Draft = groups.get(key) ?? { part, counts: [], quantity: 0 };
    groups.set(key, group);
    group.counts.push(count);
    group.quantity += quantityOf(count);
  }
  return [...groups.values()]
    .sort((one, other) => one.part.source.number - other.part.source.number)
    .map((group) => ({ ...group, quantity: pieces(group.quantity) }));
}
