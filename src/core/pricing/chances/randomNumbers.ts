/**
 * A stream of random numbers that depends on nothing but its seed, so that a simulation can be run
 * again and give the same answer on every machine.
 *
 * Generator: xoshiro128++ 1.0 by D. Blackman and S. Vigna, 2019 (public domain), period 2^128 - 1,
 * on 32-bit words, its state filled from the seed by SplitMix32 steps (a Weyl sequence through the
 * 32-bit finalizer of MurmurHash3). For simulations only, never for secrets.
 */

/** Gives the next random number. Each call moves the stream on. */
export type RandomNumbers = {
  /** A whole number from 0 to 2^32 - 1. */
  readonly word: () => number;
  /** From 0 up to but not 1, with 53 random bits. */
  readonly uniform: () => number;
};

const rotated = (word: number, by: number): number => (word << by) | (word >>> (32 - by));

/** A stream from four 32-bit words of state, not all zero: they are used as they are. */
export function randomFromState(state: readonly [number, number, number, number]): RandomNumbers {
  let [a, b, c, d] = state;
  const word = (): number => {
    const result = (rotated((a + d) | 0, 7) + a) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotated(d, 11);
    return result;
  };
  return {
    word,
    uniform: () => ((word() >>> 5) * 2 ** 26 + (word() >>> 6)) / 2 ** 53,
  };
}

/** A stream from any whole seed; only its lowest 32 bits count. */
export function randomFromSeed(seed: number): RandomNumbers {
  let weyl = seed | 0;
  const next = (): number => {
    weyl = (weyl + 0x9e3779b9) | 0;
    let mixed = Math.imul(weyl ^ (weyl >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return mixed ^ (mixed >>> 16);
  };
  return randomFromState([next(), next(), next(), next()]);
}
