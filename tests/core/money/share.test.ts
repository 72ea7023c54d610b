import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { cents } from "../../../src/core/base/units";
import { shareByLargestRemainder } from "../../../src/core/money/share";

describe("shareByLargestRemainder", () => {
  test("shares the cost of a box by the pieces that each job takes", () => {
    // 25.00 for a box of 100: 37, 41 and 15 pieces, and 7 left over.
    expect(shareByLargestRemainder(cents(2500), [37, 41, 15, 7])).toEqual([925, 1025, 375, 175]);
    expect(shareByLargestRemainder(cents(1000), [1, 1, 1], ["Mill", "Dock", "Yard"])).toEqual([
      333, 334, 333,
    ]);
  });

  test("loses and makes nothing", () => {
    const weights = fc.array(fc.integer({ min: 0, max: 1_000_000 }), { minLength: 1 });
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), weights, (total, pieces) => {
        const shares = shareByLargestRemainder(cents(total), pieces);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBe(total);
        expect(shares.some((share) => Object.is(share, -0))).toBe(false);
      }),
    );
  });

  test("gives nobody of no weight anything where another has some", () => {
    const weights = fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1 });
    fc.assert(
      fc.property(fc.nat(10_000), weights, (total, pieces) => {
        fc.pre(pieces.some((weight) => weight > 0));
        const shares = shareByLargestRemainder(cents(total), pieces);
        for (const [index, weight] of pieces.entries())
          if (weight === 0) expect(shares[index]).toBe(0);
      }),
    );
  });
});
