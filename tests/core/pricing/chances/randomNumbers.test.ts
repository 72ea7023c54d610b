import { describe, expect, test } from "@jest/globals";
import {
  randomFromSeed,
  randomFromState,
} from "../../../../src/core/pricing/chances/randomNumbers";

describe("the random numbers", () => {
  test("are those of xoshiro128++ from the state 1, 2, 3, 4", () => {
    // Made with the reference implementation, https://prng.di.unimi.it/xoshiro128plusplus.c, as kept
    // in the tests of the Rust crate rand_xoshiro.
    const random = randomFromState([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, random.word)).toEqual([
      641, 1573767, 3222811527, 3517856514, 836907274, 4247214768, 3867114732, 1355841295,
      495546011, 621204420,
    ]);
  });

  test("stay so for a long while", () => {
    // PHP's own test of the same generator: the 102,401st word, low byte first, is fa 3c 87 2c.
    const random = randomFromState([1, 2, 3, 4]);
    for (let skipped = 0; skipped < 102_400; skipped += 1) random.word();
    expect(random.word()).toBe(0x2c873cfa);
  });

  test("are the same for the same seed and others for another", () => {
    const drawn = (seed: number) => Array.from({ length: 5 }, randomFromSeed(seed).word);
    expect(drawn(7)).toEqual(drawn(7));
    expect(drawn(7)).not.toEqual(drawn(8));
    expect(new Set(drawn(0)).size).toBe(5);
  });

  test("fill the unit interval evenly", () => {
    const random = randomFromSeed(42);
    const tenths = Array.from({ length: 10 }, () => 0);
    const draws = 100_000;
    for (let draw = 0; draw < draws; draw += 1) {
      const value = random.uniform();
      expect(value >= 0 && value < 1).toBe(true);
      tenths[Math.floor(value * 10)] = (tenths[Math.floor(value * 10)] ?? 0) + 1;
    }
    // Chi-squared with 9 degrees of freedom: above 27.9 once in a thousand.
    const expected = draws / 10;
    const spread = tenths.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
    expect(spread).toBeLessThan(27.9);
  });
});
