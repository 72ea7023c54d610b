/**
 * Moving purchases between the suppliers of a group, so that least orders are not paid for nothing:
 * a search over who each thing is bought from, cut off where even the cheapest goods for the rest
 * cannot make the whole cheaper.
 *
 * It looks at the cheapest cover from every part of the group. A cover that buys more of something
 * only to reach a least order is not among them, so what it finds is the best of a large family;
 * the bound of `suppliers.ts` says how good that is.
 */
import type { PackCover } from "../offers/packs";
import { isBetterPlan, planOf, type SupplierModel, type SupplierPlan } from "./supplierPlan";

/** How many more steps the search may take; it counts down. */
export type Moves = { left: number };

/** A purchase's parts of the group beyond this many are only looked at one supplier at a time. */
const mostParts = 4;

/** The best plan found within the group, never worse than `start`. */
export function moveForLeastOrders(
  model: SupplierModel,
  group: number,
  start: SupplierPlan,
  moves: Moves,
): SupplierPlan {
  const options = model.purchases.map((_, index) => coversWithin(model, index, group));
  /** The cheapest goods for the purchases from each on. */
  const restCost = options.reduceRight<number[]>(
    (rest, covers) => [(rest[0] ?? 0) + (covers[0]?.cost ?? 0), ...rest],
    [0],
  );
  const chosen: PackCover[] = [];
  let best = start;
  const visit = (index: number, goods: number): void => {
    const covers = options[index];
    if (covers === undefined) {
      const plan = planOf(model, [...chosen]);
      if (isBetterPlan(plan, best)) best = plan;
      return;
    }
    for (const cover of covers) {
      const least = goods + cover.cost + (restCost[index + 1] ?? 0);
      if (moves.left <= 0 || least >= best.total) return;
      moves.left -= 1;
      chosen.push(cover);
      visit(index + 1, goods + cover.cost);
      chosen.pop();
    }
  };
  visit(0, 0);
  return best;
}

/** The cheapest cover of a purchase from each part of the group, cheapest first. */
function coversWithin(model: SupplierModel, purchase: number, group: number): readonly PackCover[] {
  const selling = group & (model.sellers[purchase] ?? 0);
  const members = [...new Set(model.bits)].filter((bit) => (selling & bit) !== 0);
  const parts =
    members.length <= mostParts
      ? members.reduce<readonly number[]>(
          (all, bit) => [...all, ...all.map((part) => part | bit)],
          [0],
        )
      : [selling, ...members];
  const covers = parts.flatMap((part) => model.coverFrom(purchase, part) ?? []);
  return [...new Set(covers)].sort((a, b) => a.cost - b.cost);
}
