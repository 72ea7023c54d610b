/** Cut problems for tests and benches: a short way to write one, and the published recipes. */
import { cents, pieces } from "../../../../src/core/base/units";
import { cutLength } from "../../../../src/core/purchasing/cutting/cutLength";
import type { CutProblem } from "../../../../src/core/purchasing/cutting/cutProblem";

type ProblemParts = {
  /** Length and count, with a job and a mark of their own where it matters. */
  readonly cut: readonly (readonly [length: number, count: number, job?: string, mark?: string])[];
  /** Length and price. */
  readonly stock: readonly (readonly [length: number, price: number])[];
  /** Length and count. */
  readonly onHand?: readonly (readonly [length: number, count: number])[];
  readonly kerf?: number;
  readonly endTrim?: number;
  readonly shortestOffcut?: number;
};

export const problemOf = (parts: ProblemParts): CutProblem => ({
  item: "TRACK",
  pieces: parts.cut.map(([length, count, job = "A", mark = `M${length}`]) => ({
    job,
    mark,
    length: cutLength(length),
    count: pieces(count),
  })),
  stock: parts.stock.map(([length, price]) => ({ length: cutLength(length), price: cents(price) })),
  onHand: (parts.onHand ?? []).map(([length, count]) => ({
    length: cutLength(length),
    count: pieces(count),
  })),
  saw: {
    kerf: cutLength(parts.kerf ?? 0),
    endTrim: cutLength(parts.endTrim ?? 0),
    shortestOffcut: cutLength(parts.shortestOffcut ?? 0),
  },
});

/**
 * The worked example of the cutting-stock problem in wide use, optimum 73 rolls: Wikipedia,
 * "Cutting stock problem" (a paper machine, rolls 5600 mm wide, 13 widths).
 */
export const thirteenWidths: CutProblem = problemOf({
  stock: [[5600, 10_000]],
  cut: [
    [1380, 22],
    [1520, 25],
    [1560, 12],
    [1710, 14],
    [1820, 18],
    [1880, 18],
    [1930, 20],
    [2000, 10],
    [2050, 12],
    [2100, 14],
    [2140, 16],
    [2150, 18],
    [2200, 20],
  ],
});

/** Numbers from 0 up to 1, the same for the same seed: mulberry32, a generator in the public domain. */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A whole number from `least` to `most`, both included. */
export const between = (random: () => number, least: number, most: number): number =>
  least + Math.floor(random() * (most - least + 1));

const barsOf = (lengths: readonly number[], bar: number): CutProblem =>
  problemOf({ stock: [[bar, 100]], cut: lengths.map((length) => [length, 1]) });

/** Falkenauer 1996, uniform: sizes evenly from 20 to 100 into bars of 150. */
export function uniformInstance(count: number, seed: number): CutProblem {
  const random = seeded(seed);
  return barsOf(
    Array.from({ length: count }, () => between(random, 20, 100)),
    150,
  );
}

/**
 * Falkenauer 1996, triplets: every bar of 1000 is filled by three pieces, the first from 380 to
 * 490, the second from 250 to half of what is left, the third the rest. The optimum is a third of
 * the count. (Value from memory of the recipe; sizes in tenths of the paper's.)
 */
export function tripletInstance(count: number, seed: number): CutProblem {
  const random = seeded(seed);
  const lengths = Array.from({ length: count / 3 }, () => {
    const first = between(random, 380, 490);
    const second = between(random, 250, Math.floor((1000 - first) / 2));
    return [first, second, 1000 - first - second];
  });
  return barsOf(lengths.flat(), 1000);
}

/** Many lengths and pieces of an invented shop, in millimetres. */
export function shopInstance(lengths: number, count: number, seed: number): CutProblem {
  const random = seeded(seed);
  const sizes = new Map<number, number>();
  while (sizes.size < lengths) sizes.set(between(random, 200, 2400), 1);
  const all = [...sizes.keys()];
  for (let piece = lengths; piece < count; piece += 1) {
    const size = all[between(random, 0, lengths - 1)] ?? 200;
    sizes.set(size, (sizes.get(size) ?? 0) + 1);
  }
  return problemOf({ stock: [[6000, 4200]], cut: [...sizes] });
}

/** The same shop with three stock lengths, sixty offcuts on hand, and a saw. */
export const stockedShop = (lengths: number, count: number, seed: number): CutProblem => ({
  ...problemOf({
    cut: [],
    stock: [
      [6000, 4200],
      [4000, 2900],
      [7300, 5150],
    ],
    onHand: Array.from({ length: 30 }, (_, index) => [1000 + 37 * index, 2] as const),
    kerf: 3,
    endTrim: 10,
    shortestOffcut: 300,
  }),
  pieces: shopInstance(lengths, count, seed).pieces,
});
