/**
 * One order for several jobs, start to end. Read this first.
 *
 * 1. Net need of each item and size: counted, spares, less what is covered, on hand, on order.
 * 2. What is cut is planned from bars: the pieces of all jobs together, offcuts on hand first.
 * 3. Loose needs and new bars become purchases, each with the offers that come in time.
 * 4. Suppliers and packs are chosen: the cheapest cover of every purchase, freight and least orders
 *    reckoned in.
 * 5. Each purchase becomes a line: its packs with their deadlines, each pack's cost shared over the
 *    jobs that it is for and over stock, to the cent.
 * 6. What suppliers add is shared in proportion to their goods.
 * 7. The same is reckoned job by job, to say what the common order saves.
 * 8. Findings: what nobody sells, what fits no bar, what is late.
 *
 * Nothing is left off in silence: `complete` is false as soon as a piece is not on it. The order of
 * the jobs and of the demands changes nothing.
 */
import { cents } from "../../base/units";
import { orderCuts, type PlanCuts } from "./orderCuts";
import { orderDoubts } from "./orderDoubts";
import type { OrderInput } from "./orderInput";
import { chargeLine, cutLine } from "./orderLines";
import { orderNeeds } from "./orderNeeds";
import type { OrderPlan, SupplierSavings } from "./orderPlan";
import { leftOverOf } from "../leftOver";
import { savingsOf } from "./savings";
import { addShares } from "./shares";
import { compareSized, compareText, sizedKey, type ShowSize } from "../sizedItem";
import { chooseSuppliers, type SupplierChoice } from "../offers/suppliers";
import { isSold, wantedOf } from "../wanted";

/** Runs all phases. Total: any checked input gives an order, with findings for what is not on it. */
export function planOrder(asked: OrderInput, planCuts: PlanCuts, show: ShowSize): OrderPlan {
  const jobs = asked.jobs.toSorted((a, b) => compareText(a.job, b.job));
  const input = { ...asked, jobs };
  const needs = orderNeeds(input);
  const cuts = orderCuts(input, needs, planCuts);
  const wanted = wantedOf(input, needs, cuts);

  const sold = wanted.filter(isSold);
  const choice = chooseSuppliers(
    sold.map(({ sized, buy, offers }) => ({ key: sizedKey(sized), need: buy, offers })),
    input.terms,
  );
  const lines = [
    ...wanted.map((each) => each.lineOf(choice.covers[sold.indexOf(each)] ?? null)),
    ...needs.filter(({ isCut }) => isCut).map(cutLine),
  ].sort(compareSized);
  const charges = choice.charges.map((charge) => chargeLine(charge, lines));

  const saved = savingsOf(choice, {
    jobs: jobs.map(({ job }) => job),
    loose: sold.flatMap(({ need, offers }) => (need === null ? [] : [{ need, offers }])),
    cuts,
    terms: input.terms,
    planCuts,
  });
  const findings = orderDoubts({ input, wanted, cuts, lines }, show);
  return {
    complete: findings.every(({ level }) => level !== "stop"),
    jobs,
    lines,
    cutPlans: cuts.map(({ plan }) => plan),
    charges,
    suppliers: supplierSavings(choice),
    shares: addShares([...lines, ...charges].map(({ shares }) => shares)),
    leftOver: leftOverOf(lines, cuts),
    saved,
    total: choice.total,
    findings,
  };
}

function supplierSavings(choice: SupplierChoice): SupplierSavings {
  const { fromOne, total } = choice;
  const againstOne =
    fromOne === null ? null : { supplier: fromOne.supplier, saves: cents(fromOne.total - total) };
  return {
    againstOne,
    againstPriceAlone: cents(choice.byPriceAlone - total),
    proven: choice.proven,
    lowerBound: choice.lowerBound,
  };
}
