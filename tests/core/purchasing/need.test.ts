import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { pieces } from "../../../src/core/base/units";
import { needOf, type JobCount, type Need } from "../../../src/core/purchasing/need";
import { noSpares, sparesFor, type SparesRule } from "../../../src/core/purchasing/spares";

const nut = { item: "HN 1/4", size: [] };
const count = (job: string, counted: number, supplied = 0, onOrder = 0): JobCount => ({
  job,
  counted: pieces(counted),
  supplied: pieces(supplied),
  onOrder: pieces(onOrder),
});
const free = (onHand: number, onOrder = 0) => ({
  onHand: pieces(onHand),
  onOrder: pieces(onOrder),
});
const rule = (percent: number, least: number, per: "job" | "order"): SparesRule => ({
  percent,
  least: pieces(least),
  per,
});

describe("spares", () => {
  test.each([
    [140, 5, 0, 7],
    [141, 5, 0, 8],
    [1, 0.07, 0, 1],
    [10_000, 0.07, 0, 7],
    [200, 2.5, 10, 10],
    [0, 50, 10, 0],
    [3, 0, 0, 0],
  ])("of %i at %d %% and at least %i are %i", (quantity, percent, least, expected) => {
    expect(sparesFor(pieces(quantity), rule(percent, least, "job"))).toBe(expected);
  });

  test("are reckoned for each job, or once for all", () => {
    const counts = [count("A", 10), count("B", 10)];
    expect(needOf(nut, counts, rule(5, 0, "job"), free(0)).spares).toBe(2);
    expect(needOf(nut, counts, rule(5, 0, "order"), free(0)).spares).toBe(1);
  });

  test("per order are shared over the jobs by their counts", () => {
    const need = needOf(nut, [count("A", 90), count("B", 10)], rule(10, 0, "order"), free(0));
    expect(need.jobs.map(({ job, spares }) => [job, spares])).toEqual([
      ["A", 9],
      ["B", 1],
    ]);
  });
});

describe("the net need", () => {
  test("is explained step by step", () => {
    const counts = [count("Mill", 40, 4), count("Depot", 60, 0, 10)];
    const need = needOf(nut, counts, rule(5, 4, "order"), free(20, 6));
    expect(need.steps.map(({ because, pieces: amount }) => `${amount}: ${because}`)).toEqual([
      "60: Depot counts 60",
      "40: Mill counts 40",
      "5: 5 % of 100, rounded up, and at least 4, per order: 5",
      "-4: Mill already has 4",
      "-10: Depot already has on order 10",
      "-20: 20 of 20 free on hand",
      "-6: 6 of 6 free on order",
    ]);
    expect(need.buy).toBe(65);
  });

  test("is never below zero, and takes no more off the shelf than it uses", () => {
    const need = needOf(nut, [count("A", 10)], noSpares, free(100));
    expect(need).toMatchObject({ buy: 0, fromHand: 10 });
  });

  test("leaves what one job has too much of with that job", () => {
    const need = needOf(nut, [count("A", 10, 50), count("B", 10)], noSpares, free(0));
    expect(need).toMatchObject({ buy: 10, covered: 10 });
  });

  test("of no count is nothing, whatever the least spares", () => {
    expect(needOf(nut, [count("A", 0)], rule(5, 10, "job"), free(0))).toMatchObject({
      buy: 0,
      jobs: [],
      steps: [],
    });
  });
});

describe("whatever the numbers", () => {
  const amount = fc.integer({ min: 0, max: 50 });
  const anyCounts = fc.array(
    fc
      .tuple(fc.constantFrom("A", "B", "C", "D"), amount, amount, amount)
      .map((parts) => count(...parts)),
    { maxLength: 6 },
  );
  const anyRule = fc
    .tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 5 }))
    .chain(([percent, least]) =>
      fc.constantFrom<"job" | "order">("job", "order").map((per) => rule(percent / 2, least, per)),
    );
  const anyFree = fc.tuple(amount, amount).map(([onHand, onOrder]) => free(onHand, onOrder));
  const law = (check: (need: Need, counts: readonly JobCount[]) => void): void => {
    fc.assert(
      fc.property(anyCounts, anyRule, anyFree, (counts, spares, stock) => {
        check(needOf(nut, counts, spares, stock), counts);
        expect(needOf(nut, counts.toReversed(), spares, stock)).toEqual(
          needOf(nut, counts, spares, stock),
        );
      }),
      { numRuns: 300 },
    );
  };
  const sum = (numbers: readonly number[]): number => numbers.reduce((all, each) => all + each, 0);

  test("the steps add up to what is bought, and the order of the jobs changes nothing", () => {
    law((need) => {
      expect(sum(need.steps.map((step) => step.pieces))).toBe(need.buy);
    });
  });

  test("the jobs add up to the whole in every part", () => {
    law((need) => {
      for (const part of ["counted", "spares", "fromHand", "fromOrder", "buy"] as const) {
        expect(sum(need.jobs.map((job) => job[part]))).toBe(need[part]);
      }
    });
  });
});
