/** Openings by a key that stays theirs while rows are inserted above them. */
import type { Opening } from "../../core/openings/opening";

/** One key for each of a job's openings: its mark, and which of those with that mark it is. */
export function openingKeys(openings: readonly Opening[]): ReadonlyMap<string, Opening> {
  const seen = new Map<string, number>();
  const keys = new Map<string, Opening>();
  for (const opening of openings) {
    const mark = opening.mark.toLowerCase();
    const nth = (seen.get(mark) ?? 0) + 1;
    seen.set(mark, nth);
    keys.set(`${nth} ${mark}`, opening);
  }
  return keys;
}

/** The key of `wanted`; `null` where it is not among the openings. */
export function openingKeyOf(openings: readonly Opening[], wanted: Opening): string | null {
  for (const [key, opening] of openingKeys(openings)) if (opening === wanted) return key;
  return null;
}
