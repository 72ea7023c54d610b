import { describe, expect, test } from "@jest/globals";
import { inches } from "../../../src/core/base/units";
import type {
  OrderNews,
  OrderStep,
  OrderWork,
} from "../../../src/core/purchasing/orders/orderSearch";
import { orderTask } from "../../../src/core/purchasing/orders/orderTask";
import { newsTeller } from "../../../src/main/planning/newsTeller";
import { planHere } from "../../../src/main/planning/planHere";
import { offerOf } from "../../core/purchasing/offerOf";
import { inputOf, type DemandWords } from "../../core/purchasing/orderOf";

const demands = [70, 90, 50, 110, 130, 40, 85].map((length, at): DemandWords => [
  "Mill",
  `M-${at}`,
  "TRACK",
  9,
  length,
]);
const offers = [offerOf({ item: "TRACK", size: [inches(240)], price: 5000 })];
const work: OrderWork = {
  task: orderTask(inputOf({ demands, offers })),
  lengths: { kind: "inches" },
  cutSeconds: 30,
  given: null,
  nextOrderDay: null,
};

describe("planning on the page", () => {
  test("ends with the order, whose cuts are the last that were told", async () => {
    const news: OrderNews[] = [];
    const { signal } = new AbortController();
    const worked = await planHere(work, { signal, onProgress: (each) => news.push(each) });
    expect(worked?.whole.complete).toBe(true);
    expect(worked?.whole.cutPlans[0]?.cost).toBe(news.at(-1)?.plan.cost);
  });

  test("is nothing once it was aborted", async () => {
    const stopping = new AbortController();
    const onProgress = (): void => stopping.abort();
    expect(await planHere(work, { signal: stopping.signal, onProgress })).toBeNull();
  });
});

describe("news of a search", () => {
  const step = (parts: Partial<OrderStep>): OrderStep => ({
    at: 1,
    of: 2,
    secondsLeft: 20,
    step: "values",
    cost: 500 as OrderStep["cost"],
    lowerBound: 100 as OrderStep["lowerBound"],
    plan: () => {
      throw new Error("Not asked for.");
    },
    ...parts,
  });

  test("are better plans at once, nearer bounds now and then, and nothing said twice", () => {
    let now = 1000;
    const written: string[] = [];
    const tell = newsTeller(
      () => undefined,
      () => now,
    );
    const hear = (name: string, parts: Partial<OrderStep>): void =>
      tell(
        step({
          ...parts,
          plan: () => {
            written.push(name);
            return {} as ReturnType<OrderStep["plan"]>;
          },
        }),
      );
    hear("first", {});
    hear("same", {});
    hear("nearer, too soon", { lowerBound: 200 as OrderStep["lowerBound"] });
    hear("cheaper", { cost: 400 as OrderStep["cost"] });
    now += 1000;
    hear("nearer", {
      cost: 400 as OrderStep["cost"],
      lowerBound: 300 as OrderStep["lowerBound"],
    });
    expect(written).toEqual(["first", "cheaper", "nearer"]);
  });
});
