/** What an order leaves for stock: what packs hold beyond the need, and offcuts worth keeping. */
import { pieces } from "../base/units";
import { sizeOfBar } from "./bars";
import type { CutPlan } from "./cutting/cutProblem";
import type { ItemCuts } from "./orders/orderCuts";
import type { OrderLine } from "./orders/orderPlan";
import { addUp, type SizedPieces } from "./sizedPieces";

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
