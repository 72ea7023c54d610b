import { expect, test } from "@jest/globals";
import fc from "fast-check";
import { sortInSteps } from "../../../src/core/base/sortInSteps";
import { finish } from "../../../src/core/base/steps";

const byRank = (one: { rank: number }, other: { rank: number }): number => one.rank - other.rank;

test("sorting in steps is sorting: what is equal stays as it stood", () => {
  const lengths = fc.constantFrom(0, 1, 511, 512, 513, 1024, 1025, 2600, 4096);
  fc.assert(
    fc.property(lengths, fc.integer({ min: 1, max: 2000 }), fc.nat(), (length, ranks, seed) => {
      const all = Array.from({ length }, (_, place) => ({
        rank: (place * 7919 + seed) % ranks,
        place,
      }));
      expect(finish(sortInSteps(all, byRank))).toEqual(all.toSorted(byRank));
    }),
  );
});

test("its steps are short, and tell how far it is", () => {
  let compared = 0;
  const steps = sortInSteps(
    Array.from({ length: 20_000 }, (_, place) => (place * 7919) % 20_011),
    (one, other) => {
      compared += 1;
      return one - other;
    },
  );
  let last = 0;
  let most = 0;
  for (let step = steps.next(); step.done !== true; step = steps.next()) {
    expect(step.value).toBeGreaterThanOrEqual(last);
    expect(step.value).toBeLessThanOrEqual(1);
    last = step.value;
    most = Math.max(most, compared);
    compared = 0;
  }
  expect(last).toBeGreaterThan(0.9);
  expect(most).toBeLessThan(6000);
});
