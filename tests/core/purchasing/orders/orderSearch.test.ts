import { beforeAll, describe, expect, test } from "@jest/globals";
import { loadHighsSolver } from "../../../../src/adapters/highs/highsSolver";
import { inches } from "../../../../src/core/base/units";
import type { CutPlan } from "../../../../src/core/purchasing/cutting/cutProblem";
import type { Solver } from "../../../../src/core/purchasing/cutting/solver";
import { planOrder } from "../../../../src/core/purchasing/orders/order";
import {
  searchOrder,
  type OrderWork,
  type WorkedOrder,
} from "../../../../src/core/purchasing/orders/orderSearch";
import { timeAllowance } from "../../../../src/core/purchasing/orders/timeAllowance";
import { orderTask } from "../../../../src/core/purchasing/orders/orderTask";
import { offerOf } from "../offerOf";
import { inputOf, planCuts, today, twoJobs, type DemandWords } from "../orderOf";

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

describe("the time allowed", () => {
  const items = ["A", "B", "C", "D", "E", "F"];
  /** Each three fill a bar, which first fit hardly finds. */
  const hard = items.flatMap((item, at): readonly DemandWords[] =>
    Array.from({ length: 20 }, (_, triplet) => {
      const first = 91 + ((triplet * 37 + at * 11) % 29);
      const second = 61 + ((triplet * 23 + at * 5) % 19);
      return [first, second, 240 - first - second].map((length, part): DemandWords => [
        "Mill",
        `M-${triplet}-${part}`,
        item,
        1,
        length,
      ]);
    }).flat(),
  );
  const task = orderTask(
    inputOf({
      demands: [...hard, ["Depot", "7", "ANGLE", 4, 100]],
      offers: items.map((item) => offerOf({ item, size: [inches(240)], price: 5000 })),
    }),
  );

  test("is for all items together, easy ones first, and each has a whole plan at the end", () => {
    let time = 0;
    const now = (): number => (time += 100);
    const steps = searchOrder({ ...workOf([]), task, cutSeconds: 12 }, { solver: highs, now });
    const told: { readonly item: string; readonly left: number }[] = [];
    for (;;) {
      const step = steps.next();
      if (step.done === true) {
        expect(step.value.whole.cutPlans).toHaveLength(7);
        break;
      }
      told.push({ item: step.value.plan().item, left: step.value.secondsLeft });
    }
    expect(told[0]?.item).toBe("ANGLE");
    const lefts = told.map(({ left }) => left);
    expect(lefts).toEqual(lefts.toSorted((a, b) => b - a));
    expect([...new Set(told.map(({ item }) => item))].sort()).toEqual([...items, "ANGLE"].sort());
    // The clock goes on by a few looks at it after the time is up, and by no second search.
    expect(time).toBeLessThan(16_000);
  });

  test("that one search leaves is shared by the later ones, and no more is given out", () => {
    let time = 0;
    const { searchPart, isOver, left } = timeAllowance(10, () => time);
    const first = searchPart(3);
    time = 3000;
    expect(first()).toBe(false);
    time = 3001;
    expect(first()).toBe(true);
    time = 1000;
    const second = searchPart(2);
    time = 5000;
    expect(second()).toBe(false);
    time = 5001;
    expect([second(), left()]).toEqual([true, 4.999]);
    const last = searchPart(1);
    time = 9001;
    expect([last(), isOver()]).toEqual([true, false]);
    expect(searchPart(1)()).toBe(false);
    time = 10_001;
    expect([searchPart(0)(), isOver(), left()]).toEqual([false, true, 0]);
  });
});
