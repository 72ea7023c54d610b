import { beforeAll, describe, expect, test } from "@jest/globals";
import { loadHighsSolver } from "../../../src/adapters/highs/highsSolver";
import { inches } from "../../../src/core/base/units";
import type { CutPlan } from "../../../src/core/purchasing/cutting/cutProblem";
import type { Solver } from "../../../src/core/purchasing/cutting/solver";
import { planOrder } from "../../../src/core/purchasing/order";
import {
  searchOrder,
  type OrderWork,
  type WorkedOrder,
} from "../../../src/core/purchasing/orderSearch";
import { orderTask } from "../../../src/core/purchasing/orderTask";
import { offerOf } from "./offerOf";
import { inputOf, planCuts, today, twoJobs, type DemandWords } from "./orderOf";

let highs: Solver | null;
beforeAll(async () => {
  highs = await loadHighsSolver();
});

const offers = [
  offerOf({ item: "HN 1/4", pack: 50, price: 600 }),
  offerOf({ item: "TRACK", size: [inches(240)], price: 5000 }),
  offerOf({ item: "ANGLE", size: [inches(240)], price: 3000 }),
];

/** Lengths that first fit wastes bars on. */
const awkward: readonly DemandWords[] = [
  ...[70, 90, 50, 110, 130, 40, 85].map((length, at): DemandWords => [
    "Mill",
    `M-${at}`,
    "TRACK",
    9,
    length,
  ]),
  ["Depot", "7", "ANGLE", 4, 100],
  ["Depot", "7", "HN 1/4", 15],
];

const workOf = (demands: readonly DemandWords[], work: Partial<OrderWork> = {}): OrderWork => ({
  task: orderTask(inputOf({ demands, offers, needBy: { Mill: 5, Depot: 60 } })),
  lengths: { kind: "inches" },
  cutSeconds: 30,
  given: null,
  nextOrderDay: null,
  ...work,
});

type Run = { readonly worked: WorkedOrder; readonly plans: readonly CutPlan[] };

function run(work: OrderWork, solver: Solver | null): Run {
  const steps = searchOrder(work, { solver, now: () => performance.now() });
  const plans: CutPlan[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done === true) return { worked: step.value, plans };
    plans.push(step.value.plan());
  }
}

describe("an order worked out in steps", () => {
  test("is the order that is worked out at once", () => {
    const input = inputOf({ demands: twoJobs, offers });
    const work = { ...workOf(twoJobs), task: orderTask(input) };
    const once = planOrder(input, planCuts, (size) => size.map(String).join(" x "));
    expect(run(work, null).worked.whole).toEqual(once);
  });

  test("can be sent to another thread, and sent back", () => {
    const work = workOf(awkward);
    const sent = structuredClone(work);
    const { worked } = run(sent, null);
    expect(structuredClone(worked)).toEqual(run(work, null).worked);
  });

  test("tells of every item that is cut, each plan as good as the one before or better", () => {
    const { worked, plans } = run(workOf(awkward), highs);
    expect([...new Set(plans.map(({ item }) => item))]).toEqual(["ANGLE", "TRACK"]);
    const costs = plans.filter(({ item }) => item === "TRACK").map(({ cost }) => cost);
    expect(costs).toEqual(costs.toSorted((a, b) => b - a));
    expect(worked.whole.cutPlans.map(({ proven }) => proven)).toEqual([true, true]);
  });

  test("stopped early goes on from the best plans seen, and searches no more", () => {
    const { plans } = run(workOf(awkward), null);
    const best = plans.filter(({ item }) => item === "TRACK").at(-1);
    if (best === undefined) throw new Error("TRACK is cut.");
    const stopped = run(workOf(awkward, { given: [best] }), highs);
    expect(stopped.plans).toEqual([]);
    expect(stopped.worked.whole.cutPlans.find(({ item }) => item === "TRACK")).toEqual(best);
    expect(stopped.worked.whole.cutPlans.map(({ item }) => item)).toEqual(["ANGLE", "TRACK"]);
    expect(stopped.worked.whole.complete).toBe(true);
  });

  test("does not believe a given plan that does not fit what is cut", () => {
    const { worked } = run(workOf(awkward), null);
    const [first] = worked.whole.cutPlans;
    if (first === undefined) throw new Error("Something is cut.");
    const wrong = { ...first, bars: first.bars.slice(1) };
    const again = run(workOf(awkward, { given: [wrong] }), null).worked.whole;
    expect(again.cutPlans.find(({ item }) => item === first.item)?.bars).toHaveLength(
      first.bars.length,
    );
  });

  test("is split into now and later on request, with the same cuts", () => {
    const { worked } = run(workOf(awkward, { nextOrderDay: today + 10 }), highs);
    const { inTwo, whole } = worked;
    expect(inTwo?.now.lines.map(({ item }) => item)).toContain("TRACK");
    expect(inTwo?.canWait.lines.map(({ item }) => item)).toContain("HN 1/4");
    expect(inTwo?.now.cutPlans).toEqual(whole.cutPlans.filter(({ item }) => item === "TRACK"));
  });
});
