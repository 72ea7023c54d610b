import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import type { Estimate } from "../../../src/core/estimate/estimate";
import { pieceKey } from "../../../src/core/takeoff/partColumn";
import { quantityOf } from "../../../src/core/takeoff/explain";
import { countsIn } from "../../../src/core/takeoff/take";
import { anyOpenings as openings, rowsOf } from "./anyOpenings";
import { estimateRows } from "./notation";

/** Every quantity by job, item and size. */
const quantities = ({ jobs }: Estimate): ReadonlyMap<string, number> =>
  new Map(
    jobs.flatMap(({ job, takeOff }) =>
      takeOff.lines.map((line): [string, number] => [
        `${job}: ${pieceKey(line.item, line.size)}`,
        line.quantity,
      ]),
    ),
  );

const sorted = (counts: ReadonlyMap<string, number>) =>
  [...counts].sort(([a], [b]) => (a < b ? -1 : 1));

describe("whatever the schedule", () => {
  test("the reasons of a line add up to its quantity", () => {
    fc.assert(
      fc.property(openings, (given) => {
        for (const { takeOff } of estimateRows(rowsOf(given)).jobs) {
          for (const line of takeOff.lines) {
            const sum = [...countsIn(line.counts)].reduce(
              (total, count) => total + quantityOf(count),
              0,
            );
            expect(sum).toBe(line.quantity);
            expect(sum).toBeGreaterThan(0);
          }
        }
      }),
      { numRuns: 25 },
    );
  });

  test("the order of the rows changes no quantity", () => {
    fc.assert(
      fc.property(openings, (given) => {
        const forward = quantities(estimateRows(rowsOf(given)));
        const backward = quantities(estimateRows(rowsOf([...given].reverse())));
        expect(sorted(backward)).toEqual(sorted(forward));
      }),
      { numRuns: 25 },
    );
  });

  test("twice as many alike is twice the count", () => {
    fc.assert(
      fc.property(openings, (given) => {
        const once = quantities(estimateRows(rowsOf(given)));
        const doubled = given.map((each) => ({ ...each, quantity: 2 * each.quantity }));
        const twice = quantities(estimateRows(rowsOf(doubled)));
        expect(sorted(twice)).toEqual(sorted(once).map(([key, count]) => [key, 2 * count]));
      }),
      { numRuns: 25 },
    );
  });

  test("two schedules together are the sum of each", () => {
    fc.assert(
      fc.property(openings, openings, (one, other) => {
        const together = quantities(estimateRows(rowsOf([...one, ...other])));
        const first = quantities(estimateRows(rowsOf(one)));
        const second = quantities(estimateRows(rowsOf(other)));
        const sum = new Map(first);
        for (const [key, count] of second) sum.set(key, (sum.get(key) ?? 0) + count);
        expect(sorted(together)).toEqual(sorted(sum));
      }),
      { numRuns: 25 },
    );
  });

  test("every row is counted or named as not counted, and complete says which", () => {
    fc.assert(
      fc.property(openings, (given) => {
        const result = estimateRows(rowsOf(given));
        const uncounted = result.jobs.flatMap((job) => job.uncounted);
        const counted = result.takeOff.jobs.flatMap((job) =>
          job.openings.filter((each) => !job.stopped.includes(each)),
        );
        expect(uncounted.length + counted.length).toBe(given.length);
        expect(uncounted.every((row) => row.findings.some((each) => each.level === "stop"))).toBe(
          true,
        );
        expect(result.complete).toBe(uncounted.length === 0);
      }),
      { numRuns: 25 },
    );
  });
});
