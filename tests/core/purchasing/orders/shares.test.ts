import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { cents } from "../../../../src/core/base/units";
import {
  addShares,
  shareCost,
  type ShareWeight,
} from "../../../../src/core/purchasing/orders/shares";

describe("a cost", () => {
  test("is shared by weight, with the odd cent to a job before stock", () => {
    const weights = [
      { job: null, weight: 1 },
      { job: "B", weight: 1 },
      { job: "A", weight: 1 },
    ];
    expect(shareCost(cents(100), weights)).toEqual([
      { job: "A", cost: 34 },
      { job: "B", cost: 33 },
      { job: null, cost: 33 },
    ]);
  });

  test("that nobody has a weight in is stock's", () => {
    expect(shareCost(cents(7), [{ job: "A", weight: 0 }])).toEqual([{ job: null, cost: 7 }]);
    expect(shareCost(cents(0), [])).toEqual([]);
  });
});

describe("whatever the weights", () => {
  const anyWeights = fc.array(
    fc.record<ShareWeight>({
      job: fc.constantFrom("A", "B", "C", null),
      weight: fc.oneof(
        fc.integer({ min: 0, max: 9 }),
        fc.double({ min: 0, max: 1e8, noNaN: true }),
      ),
    }),
    { maxLength: 8 },
  );
  const anyCost = fc.integer({ min: 0, max: 1e9 }).map(cents);

  test("nothing is lost or made, and no share is below zero", () => {
    fc.assert(
      fc.property(anyCost, anyWeights, (cost, weights) => {
        const shares = shareCost(cost, weights);
        expect(shares.reduce((sum, share) => sum + share.cost, 0)).toBe(cost);
        expect(shares.every((share) => share.cost >= 0)).toBe(true);
      }),
    );
  });

  test("the order of the jobs does not matter", () => {
    const whole = fc.array(
      fc.record<ShareWeight>({
        job: fc.constantFrom("A", "B", "C", null),
        weight: fc.integer({ min: 0, max: 1e6 }),
      }),
    );
    fc.assert(
      fc.property(anyCost, whole, (cost, weights) => {
        expect(shareCost(cost, weights.toReversed())).toEqual(shareCost(cost, weights));
      }),
    );
  });

  test("shares of several costs add up by job", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(anyCost, anyWeights), { maxLength: 5 }), (costs) => {
        const lists = costs.map(([cost, weights]) => shareCost(cost, weights));
        const sum = costs.reduce((all, [cost]) => all + cost, 0);
        expect(addShares(lists).reduce((all, share) => all + share.cost, 0)).toBe(sum);
      }),
    );
  });
});
