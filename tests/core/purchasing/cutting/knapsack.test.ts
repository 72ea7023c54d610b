import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { bestFillings } from "../../../../src/core/purchasing/cutting/knapsack";

const piece = fc.record({
  size: fc.integer({ min: 0, max: 9 }),
  value: fc.integer({ min: 0, max: 20 }),
  limit: fc.integer({ min: 0, max: 4 }),
});

/** The best value by trying every count of every piece. */
function tryAll(
  all: readonly { size: number; value: number; limit: number }[],
  room: number,
): number {
  const [first, ...others] = all;
  if (first === undefined) return 0;
  let best = 0;
  for (let count = 0; count <= first.limit && count * first.size <= room; count += 1) {
    best = Math.max(best, count * first.value + tryAll(others, room - count * first.size));
  }
  return best;
}

describe("the best filling", () => {
  test("is worth as much as the best of all fillings, for every room at once", () => {
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 5 }),
        fc.integer({ min: 0, max: 20 }),
        (all, room) => {
          const sizes = all.map(({ size }) => size);
          const values = all.map(({ value }) => value);
          const limits = all.map(({ limit }) => limit);
          const fillings = bestFillings(sizes, values, limits, room);
          for (let at = 0; at <= room; at += 1) {
            expect(fillings.value(at)).toBe(tryAll(all, at));
            const counts = fillings.counts(at);
            const sum = (each: readonly number[]): number =>
              counts.reduce((total, count, index) => total + count * (each[index] ?? 0), 0);
            expect(sum(values)).toBe(fillings.value(at));
            expect(sum(sizes)).toBeLessThanOrEqual(at);
            counts.forEach((count, index) => expect(count).toBeLessThanOrEqual(limits[index] ?? 0));
          }
        },
      ),
      { numRuns: 100 },
    );
  });
});
