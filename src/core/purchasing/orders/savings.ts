/** What ordering once for all jobs saves against ordering for each job by itself. */
import { cents, pieces } from "../../base/units";
import { barsToBuy } from "../bars";
import type { BarsOnHand, CutPlan } from "../cutting/cutProblem";
import type { Offer } from "../offers/offers";
import type { ItemCuts, PlanCuts } from "./orderCuts";
import type { OrderNeed } from "./orderNeeds";
import type { Savings } from "./orderPlan";
import { packCount, type PackCover } from "../offers/packs";
import { compareText } from "../sizedItem";
import { chooseSuppliers } from "../offers/suppliers";
import type { Purchase, SupplierPlan, SupplierTerms } from "./supplierPlan";

/** A need that is bought loose, and who sells it. */
export type LooseNeed = { readonly need: OrderNeed["need"]; readonly offers: readonly Offer[] };

export type JobByJob = {
  readonly jobs: readonly string[];
  readonly loose: readonly LooseNeed[];
  readonly cuts: readonly ItemCuts[];
  readonly terms: readonly SupplierTerms[];
  readonly planCuts: PlanCuts;
};

/**
 * Each job, by name, orders what is its own of the net need, from the same offers, and pays freight
 * and least orders by itself. Bars on hand serve the jobs in that order; no job gets another's
 * offcuts. What nobody sells counts on neither side. `null` for fewer than two jobs.
 */
export function savingsOf(together: SupplierPlan, apart: JobByJob): Savings | null {
  if (apart.jobs.length < 2) return null;
  const shelves = new Map(apart.cuts.map((cut) => [cut, cut.problem.onHand]));
  const plans = apart.jobs
    .toSorted(compareText)
    .map((job) => chooseSuppliers(purchasesOfJob(job, apart, shelves), apart.terms));
  const sum = (amounts: readonly number[]): number => amounts.reduce((all, each) => all + each, 0);
  const covers = plans.flatMap((plan) => plan.covers);
  return {
    money: cents(sum(plans.map((plan) => plan.total)) - together.total),
    pieces: sum(covers.map(piecesIn)) - sum(together.covers.map(piecesIn)),
    packs: sum(covers.map(packCount)) - sum(together.covers.map(packCount)),
  };
}

function purchasesOfJob(
  job: string,
  { loose, cuts, planCuts }: JobByJob,
  shelves: Map<ItemCuts, readonly BarsOnHand[]>,
): readonly Purchase[] {
  const looseOnes = loose.map(({ need, offers }, index) => ({
    key: `loose ${index}`,
    need: need.jobs.find((each) => each.job === job)?.buy ?? pieces(0),
    offers,
  }));
  const bars = cuts.flatMap((cut) => {
    const onHand = shelves.get(cut) ?? [];
    const own = cut.problem.pieces.filter((piece) => piece.job === job);
    const plan = planCuts({ ...cut.problem, pieces: own, onHand }, "alone");
    shelves.set(cut, shelfAfter(onHand, plan));
    return barsToBuy(plan).map(({ length, bars: need }) => ({
      key: `bar ${cut.problem.item} ${length}`,
      need,
      offers: cut.offers.get(length) ?? [],
    }));
  });
  return [...looseOnes, ...bars].filter(({ need, offers }) => need > 0 && offers.length > 0);
}

function shelfAfter(onHand: readonly BarsOnHand[], plan: CutPlan): readonly BarsOnHand[] {
  const used = plan.bars.filter((bar) => bar.from === "onHand").map((bar) => bar.length);
  return onHand.map(({ length, count }) => {
    let left: number = count;
    while (left > 0 && used.includes(length)) {
      used.splice(used.indexOf(length), 1);
      left -= 1;
    }
    return { length, count: pieces(left) };
  });
}

const piecesIn = (cover: PackCover): number =>
  cover.packs.reduce((sum, { offer, count }) => sum + count * offer.packSize, 0);
