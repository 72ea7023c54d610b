import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { shareWhole } from "../../../src/core/base/shareWhole";

describe("shareWhole", () => {
  test.each([
    // total, weights, shares
    [100, [1, 1, 1], [34, 33, 33]],
    [100, [1, 2], [33, 67]],
    [-100, [1, 1, 1], [-34, -33, -33]],
    [0, [3, 4], [0, 0]],
    [7, [0, 0], [4, 3]],
    [7, [0, 5], [0, 7]],
    [10, [0.1, 0.2], [3, 7]],
    [0, [], []],
    [Number.MAX_SAFE_INTEGER, [1, 1], [4_503_599_627_370_496, 4_503_599_627_370_495]],
  ])("shares %d by %j as %j", (total, weights, shares) => {
    expect(shareWhole(total, weights)).toEqual(shares);
  });

  test("gives the odd one to the largest remainder, then to the larger weight, then by name", () => {
    // 7 by 2 and 12: exactly 1 and 6. 8: 1 1/7 and 6 6/7.
    expect(shareWhole(8, [2, 12])).toEqual([1, 7]);
    // 10 by 1, 3 and 16: a half, one and a half, and eight, so the remainders are equal.
    expect(shareWhole(10, [1, 3, 16])).toEqual([0, 2, 8]);
    expect(shareWhole(1, [5, 5], ["Mill", "Dock"])).toEqual([0, 1]);
  });

  const weights = fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), {
    minLength: 1,
    maxLength: 12,
  });
  const total = fc.integer({ min: -1e12, max: 1e12 });

  test("hands out all of it, and to nobody a whole one more or less than exact", () => {
    fc.assert(
      fc.property(total, weights, (amount, shares) => {
        const given = shareWhole(amount, shares);
        expect(given.reduce((sum, share) => sum + share, 0)).toBe(amount);
        const counted = shares.map((weight) => BigInt(Math.round(weight * 1e6)));
        const whole = counted.reduce((sum, weight) => sum + weight, 0n);
        if (whole === 0n) return;
        for (const [index, share] of given.entries()) {
          const off = BigInt(share) * whole - BigInt(amount) * (counted[index] ?? 0n);
          expect(off < whole && off > -whole).toBe(true);
        }
      }),
    );
  });

  test("gives each name the same, whatever the order", () => {
    const named = fc.uniqueArray(fc.record({ name: fc.string(), weight: fc.nat(5) }), {
      selector: ({ name }) => name,
      minLength: 1,
      maxLength: 10,
    });
    const shared = (amount: number, entries: readonly { name: string; weight: number }[]) =>
      new Map(
        shareWhole(
          amount,
          entries.map(({ weight }) => weight),
          entries.map(({ name }) => name),
        ).map((share, index) => [entries[index]?.name, share]),
      );
    fc.assert(
      fc.property(total, named, fc.nat(), (amount, entries, turn) => {
        const cut = turn % entries.length;
        const turned = [...entries.slice(cut), ...entries.slice(0, cut)].reverse();
        const [one, other] = [shared(amount, entries), shared(amount, turned)];
        for (const { name } of entries) expect(other.get(name)).toBe(one.get(name));
      }),
    );
  });

  test.each([
    ["a weight below zero", 1, [-1, 2], []],
    ["a weight that is no number", 1, [NaN], []],
    ["a weight without end", 1, [Infinity], []],
    ["nobody to share", 1, [], []],
    ["a total that is not whole", 0.5, [1], []],
    ["too few names", 1, [1, 2], ["Dock"]],
  ])("throws on %s", (_what, amount, shares, names) => {
    expect(() => shareWhole(amount, shares, names)).toThrow(RangeError);
  });
});
