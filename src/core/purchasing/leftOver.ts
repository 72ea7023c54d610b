/** What an order leaves for stock: what packs hold beyond the need, and offcuts worth keeping. */
import { pieces } from "../base/units";
import { sizeOfBar } from "./bars";
import type { CutPlan } from "./cutting/cutProblem";
import type { ItemCuts } from "./orderCuts";
import type { SizedPieces } from "./orderInput";
import type { OrderLine } from "./orderPlan";
import { compareSized, sizedKey } from "./sizedItem";

/** By item, then by size. */
export const leftOverOf = (
  lines: readonly OrderLine[],
  cuts: readonly ItemCuts[],
): readonly SizedPieces[] =>
  addUp([
    ...lines.map(({ item, size, leftOver }) => ({ item, size, pieces: leftOver })),
    ...cuts.flatMap(({ plan }) => offcutsOf(plan)),
  ]);

/** Each offcut worth keeping, of new bars and of bars on hand. */
export const offcutsOf = (plan: CutPlan): readonly SizedPieces[] =>
  plan.bars
    .filter((bar) => bar.kept)
    .map((bar) => ({ item: plan.item, size: sizeOfBar(bar.offcut), pieces: pieces(1) }));

/** The same item and size as one entry, those of none left out; by item, then by size. */
export function addUp(all: readonly SizedPieces[]): readonly SizedPieces[] {
  const byKey = new Map<string, SizedPieces>();
  for (const each of all) {
    const before = byKey.get(sizedKey(each));
    const { item, size } = before ?? each;
    byKey.set(sizedKey(each), { item, size, pieces: pieces((before?.pieces ?? 0) + each.pieces) });
  }
  return [...byKey.values()].filter((each) => each.pieces > 0).sort(compareSized);
}
