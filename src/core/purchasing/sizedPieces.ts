/** Pieces of sized items: counted together, and looked up. */
import { pieces, type Pieces } from "../base/units";
import { compareSized, sizedKey, type SizedItem } from "./sizedItem";

export type SizedPieces = SizedItem & { readonly pieces: Pieces };
export type JobPieces = SizedPieces & { readonly job: string };

/** The same item and size as one entry, those of none left out; by item, then by size. */
export function addUp(all: readonly SizedPieces[]): readonly SizedPieces[] {
  const first = new Map(all.toReversed().map((each) => [sizedKey(each), each]));
  return [...piecesByKey(all, sizedKey)]
    .flatMap(([key, count]) => {
      const { item, size } = first.get(key) ?? { item: "", size: [] };
      return count === 0 ? [] : [{ item, size, pieces: pieces(count) }];
    })
    .sort(compareSized);
}

/** How many pieces there are by key. */
export function piecesByKey<Counted extends SizedPieces>(
  all: readonly Counted[],
  keyOf: (each: Counted) => string,
): Map<string, number> {
  const counts = new Map<string, number>();
  for (const each of all) counts.set(keyOf(each), (counts.get(keyOf(each)) ?? 0) + each.pieces);
  return counts;
}

/** What is left of each entry when those are gone, the first entries first; those of none left out. */
export function lessPieces<Counted extends SizedPieces>(
  all: readonly Counted[],
  gone: readonly Counted[],
  keyOf: (each: Counted) => string,
): readonly Counted[] {
  const away = piecesByKey(gone, keyOf);
  return all.flatMap((each) => {
    const key = keyOf(each);
    const less = Math.min(each.pieces, away.get(key) ?? 0);
    away.set(key, (away.get(key) ?? 0) - less);
    return less === each.pieces ? [] : [{ ...each, pieces: pieces(each.pieces - less) }];
  });
}

/** A key that is another for each job. */
export const jobKeyOf = (job: string, sized: SizedItem): string =>
  JSON.stringify([job, sizedKey(sized)]);
