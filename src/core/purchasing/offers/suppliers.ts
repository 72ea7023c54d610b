/**
 * One supplier or several: split by price, unless freight or a least order makes it dearer.
 *
 * Every group of suppliers is looked at. Within a group each thing is bought at its cheapest from
 * the group, and where that leaves somebody below a least order, purchases are moved between
 * suppliers as far as it pays. A group's orders cannot cost less than its cheapest goods, or its
 * least orders where those come to more, and its freight. The lowest of these over all groups is
 * the bound.
 */
import { cents, type Cents } from "../../base/units";
import { moveForLeastOrders, type Moves } from "../orders/moveForLeastOrders";
import {
  cheapestFrom,
  isBetterPlan,
  planOf,
  supplierModel,
  type Purchase,
  type SupplierModel,
  type SupplierPlan,
  type SupplierTerms,
} from "../orders/supplierPlan";

export type SupplierChoice = SupplierPlan & {
  /** No choice of suppliers and packs costs less. */
  readonly lowerBound: Cents;
  /** Whether total and bound meet. */
  readonly proven: boolean;
  /** Each thing at its cheapest, whoever sells it, with what the suppliers then add. */
  readonly byPriceAlone: Cents;
  /** The cheapest way to buy all from one supplier; `null` where nobody sells all. */
  readonly fromOne: { readonly supplier: string; readonly total: Cents } | null;
};

/** With more suppliers than this, not every group is looked at: they are left out one by one as it pays. */
const mostSuppliers = 10;
/** How many moves between suppliers are tried in all. */
const mostMoves = 50_000;

/** @throws RangeError when nobody sells one of the purchases. */
export function chooseSuppliers(
  purchases: readonly Purchase[],
  terms: readonly SupplierTerms[],
): SupplierChoice {
  const model = supplierModel(purchases, terms);
  const count = model.suppliers.length;
  const everyone = model.bits.reduce((group, bit) => group | bit, 0);
  const covers = cheapestFrom(model, everyone);
  if (covers === null) throw new RangeError("Nobody sells one of the purchases.");
  const byPrice = planOf(model, covers);
  const moves: Moves = { left: mostMoves };
  const { plan, bound } =
    count <= mostSuppliers
      ? bestOfAllGroups(model, byPrice, moves)
      : fewerAndFewer(model, everyone, byPrice, moves);
  const lowerBound = cents(Math.min(plan.total, bound));
  return {
    ...plan,
    lowerBound,
    proven: plan.total === lowerBound && plan.covers.every((cover) => cover.exact),
    byPriceAlone: byPrice.total,
    fromOne: cheapestSingle(model),
  };
}

type Chosen = { readonly plan: SupplierPlan; readonly bound: number };

function bestOfAllGroups(model: SupplierModel, byPrice: SupplierPlan, moves: Moves): Chosen {
  const groups = Array.from({ length: 2 ** model.suppliers.length - 1 }, (_, index) => index + 1)
    .map((group) => ({ group, bound: boundOf(model, group) }))
    .filter(({ bound }) => bound < Infinity)
    .sort((a, b) => a.bound - b.bound || a.group - b.group);
  let plan = byPrice;
  for (const { group, bound } of groups) {
    if (bound > plan.total) break;
    const next = planWithin(model, group, moves);
    if (next !== null && isBetterPlan(next, plan)) plan = next;
  }
  return { plan, bound: groups[0]?.bound ?? 0 };
}

/** Leaves out the supplier without whom all costs least, again and again, while it pays. */
function fewerAndFewer(
  model: SupplierModel,
  everyone: number,
  byPrice: SupplierPlan,
  moves: Moves,
): Chosen {
  let group = everyone;
  let plan = planWithin(model, group, moves) ?? byPrice;
  for (;;) {
    let best: { readonly group: number; readonly plan: SupplierPlan } | null = null;
    for (const bit of model.bits) {
      const fewer = group & ~bit;
      const next = fewer === group ? null : planWithin(model, fewer, moves);
      if (next !== null && isBetterPlan(next, best?.plan ?? plan))
        best = { group: fewer, plan: next };
    }
    if (best === null) break;
    ({ group, plan } = best);
  }
  const goods = cheapestFrom(model, everyone)?.reduce((sum, cover) => sum + cover.cost, 0) ?? 0;
  const freight = Math.min(...model.terms.map((terms) => terms.freight));
  return { plan, bound: goods + (model.purchases.length === 0 ? 0 : freight) };
}

function planWithin(model: SupplierModel, group: number, moves: Moves): SupplierPlan | null {
  const covers = cheapestFrom(model, group);
  if (covers === null) return null;
  const plan = planOf(model, covers);
  const isShort = plan.charges.some(({ madeUp }) => madeUp > 0);
  return isShort ? moveForLeastOrders(model, group, plan, moves) : plan;
}

/** What orders to all suppliers of the group cannot cost less than; infinite where they do not sell all. */
function boundOf(model: SupplierModel, group: number): number {
  const covers = cheapestFrom(model, group);
  if (covers === null) return Infinity;
  const members = model.terms.filter((_, index) => (group & (model.bits[index] ?? 0)) !== 0);
  const goods = covers.reduce((sum, cover) => sum + cover.cost, 0);
  const least = members.reduce((sum, terms) => sum + terms.leastOrder, 0);
  return Math.max(goods, least) + members.reduce((sum, terms) => sum + terms.freight, 0);
}

function cheapestSingle(model: SupplierModel): SupplierChoice["fromOne"] {
  let best: { readonly supplier: string; readonly total: Cents } | null = null;
  model.suppliers.forEach((supplier, index) => {
    const bit = model.bits[index] ?? 0;
    const covers = cheapestFrom(model, bit);
    // A bit that several suppliers share is not one supplier.
    if (covers === null || model.bits.indexOf(bit) !== model.bits.lastIndexOf(bit)) return;
    const { total } = planOf(model, covers);
    if (best === null || total < best.total) best = { supplier, total };
  });
  return best;
}
