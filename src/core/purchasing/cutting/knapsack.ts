/** The best filling of a bar: a knapsack of pieces with values, solved exactly for every room at once. */

/** The most valuable filling of any room up to the one asked for. */
export type Fillings = {
  /** The value of the best filling of the room. */
  readonly value: (room: number) => number;
  /** How many of each size the best filling of the room holds. */
  readonly counts: (room: number) => number[];
};

/** A set of alike pieces that is taken whole or not at all. */
type Bundle = { readonly index: number; readonly pieces: number; readonly size: number };

/**
 * Solves for all rooms from 0 to `room`: exact dynamic programme, one table row for each bundle of
 * 1, 2, 4 … alike pieces, so that any count up to the limit can be made.
 *
 * `sizes` are whole steps, `limits` the most of each; a size with a value of zero or less is never
 * taken. `values` must be whole and their sums below 2^53 for the result to be exact. Time and
 * memory grow with bundles x room.
 */
export function bestFillings(
  sizes: readonly number[],
  values: readonly number[],
  limits: readonly number[],
  room: number,
): Fillings {
  const bundles = bundle(sizes, values, limits, room);
  const width = room + 1;
  const best = new Float64Array(width);
  const taken = new Uint8Array(bundles.length * width);
  bundles.forEach(({ index, pieces, size }, row) => {
    const value = (values[index] ?? 0) * pieces;
    const offset = row * width;
    for (let at = room; at >= size; at -= 1) {
      const withBundle = (best[at - size] ?? 0) + value;
      if (withBundle > (best[at] ?? 0)) {
        best[at] = withBundle;
        taken[offset + at] = 1;
      }
    }
  });
  return {
    value: (at) => best[at] ?? 0,
    counts: (at) => {
      const counts = sizes.map(() => 0);
      let left = at;
      for (let row = bundles.length - 1; row >= 0; row -= 1) {
        const { index, pieces, size } = bundles[row] ?? { index: 0, pieces: 0, size: 0 };
        if (taken[row * width + left] !== 1) continue;
        counts[index] = (counts[index] ?? 0) + pieces;
        left -= size;
      }
      return counts;
    },
  };
}

function bundle(
  sizes: readonly number[],
  values: readonly number[],
  limits: readonly number[],
  room: number,
): readonly Bundle[] {
  return sizes.flatMap((size, index) => {
    if ((values[index] ?? 0) <= 0) return [];
    const limit = limits[index] ?? 0;
    // A size of zero steps (rounded down) fits any number of times; only its limit holds it.
    let left = size === 0 ? limit : Math.min(limit, Math.floor(room / size));
    const bundles: Bundle[] = [];
    for (let pieces = 1; left > 0; pieces *= 2) {
      const count = Math.min(pieces, left);
      bundles.push({ index, pieces: count, size: count * size });
      left -= count;
    }
    return bundles;
  });
}
