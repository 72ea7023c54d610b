/** Rounding against exact decimals (big.js) of the 15 digits that a spreadsheet shows. */
import { describe, expect, test } from "@jest/globals";
import Big from "big.js";
import fc from "fast-check";
import {
  ceilingTo,
  floorTo,
  remainder,
  roundDown,
  roundHalfAway,
  roundUp,
  showFloor,
  showSame,
  snapped,
} from "../../../src/core/formulas/rounding";

const shownDigits = (value: number): Big => new Big(value.toPrecision(15));

/** Numbers of the sizes that counts and lengths have, many of them near a half or a whole. */
const sized = fc.oneof(
  fc
    .double({ min: -1e6, max: 1e6, noNaN: true })
    .filter((value) => value === 0 || Math.abs(value) > 1e-9),
  fc
    .tuple(fc.integer({ min: -2_000_000, max: 2_000_000 }), fc.integer({ min: 1, max: 1000 }))
    .map(([top, bottom]) => top / bottom),
  fc.integer({ min: -10_000_000, max: 10_000_000 }).map((thousandths) => thousandths / 1000),
  fc.integer({ min: -1000, max: 1000 }).map((tenths) => tenths * 0.1),
);
const digits = fc.integer({ min: -4, max: 6 });

/** big.js: rounding modes by its numbers. */
const modes = [
  ["half away from zero", roundHalfAway, Big.roundHalfUp],
  ["away from zero", roundUp, Big.roundUp],
  ["towards zero", roundDown, Big.roundDown],
] as const;

describe("rounding takes a number as it shows", () => {
  test.each(modes)("%s", (_says, rounds, mode) => {
    fc.assert(
      fc.property(sized, digits, (value, places) => {
        const expected = shownDigits(value).round(places, mode).toNumber();
        expect(snapped(rounds(value, places)) + 0).toBe(snapped(expected) + 0);
      }),
      { numRuns: 3000 },
    );
  });

  test("the whole number below is that of the shown digits", () => {
    fc.assert(
      fc.property(sized, (value) => {
        const shown = shownDigits(value);
        const whole = shown.round(0, Big.roundDown);
        const below = whole.gt(shown) ? whole.minus(1) : whole;
        expect(showFloor(value) + 0).toBe(below.toNumber());
      }),
      { numRuns: 3000 },
    );
  });

  test("two numbers show the same where their 15 digits are", () => {
    const nudged = fc
      .tuple(sized, fc.integer({ min: -40, max: 40 }))
      .map(([value, steps]) => [value, value * (1 + steps * 2 ** -52)] as const);
    fc.assert(
      fc.property(fc.oneof(nudged, fc.tuple(sized, sized)), ([one, other]) => {
        expect(showSame(one, other)).toBe(one === other || shownDigits(one).eq(shownDigits(other)));
      }),
      { numRuns: 3000 },
    );
  });

  test("a multiple of the step is at or beyond the number, by less than one step", () => {
    const steps = fc.constantFrom(0.1, 0.25, 0.5, 1, 1.5, 2, 12, 120, 1 / 3);
    fc.assert(
      fc.property(sized, steps, (value, step) => {
        const above = ceilingTo(value, step);
        const below = floorTo(value, step);
        const slack = 1e-9 * Math.max(1, Math.abs(value));
        expect(above).toBeGreaterThanOrEqual(value - slack);
        expect(above - value).toBeLessThan(step + slack);
        expect(below).toBeLessThanOrEqual(value + slack);
        expect(value - below).toBeLessThan(step + slack);
        expect(Math.abs(above / step - Math.round(above / step))).toBeLessThan(1e-6);
      }),
    );
  });

  test("what is left over is below the divisor, with its sign", () => {
    const divisors = fc.constantFrom(-12, -1, -0.3, 0.1, 0.7, 1, 3, 12, 120);
    fc.assert(
      fc.property(sized, divisors, (value, divisor) => {
        const left = remainder(value, divisor);
        expect(Math.abs(left)).toBeLessThan(Math.abs(divisor) * (1 + 1e-9));
        expect(left === 0 || Math.sign(left) === Math.sign(divisor)).toBe(true);
      }),
    );
  });

  test("there is no answer for a divisor of zero or for too many whole divisors", () => {
    expect(remainder(5, 0)).toBeNaN();
    expect(remainder(1e20, 3)).toBeNaN();
  });
});
