/** Names of sizes, fields and charts: one spelling for all the ways that people write one name. */

/**
 * The spelling under which a name is known: small letters, every run of spaces and punctuation one
 * `_`, none at the ends. `Post height`, `POST_HEIGHT` and `post-height:` are all `post_height`; a text
 * without letter or digit is the empty text.
 */
export const normalName = (text: string): string =>
  text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\p{M}]+/gu, "_")
    .replace(/^_|_$/g, "");

/** How a formula writes the name: in square brackets unless it is one plain word. */
export const nameInFormula = (name: string): string =>
  /^[\p{L}_][\p{L}\p{N}\p{M}_.]*$/u.test(name) ? name : `[${name}]`;

/** Longer names are compared by their first characters: distance grows with the square of this. */
const comparedLength = 60;

/**
 * The known name that is likest to `name`, if it is likely that it was meant: at most a third of the
 * characters (and at least one) typed wrong, left out, added or swapped with their neighbour. The
 * earlier one in a tie. `undefined` where none is near.
 */
export function nearestName(name: string, known: Iterable<string>): string | undefined {
  const wanted = normalName(name).slice(0, comparedLength);
  let best: string | undefined;
  let least = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const candidate of known) {
    const other = normalName(candidate).slice(0, comparedLength);
    if (Math.abs(other.length - wanted.length) >= least) continue;
    const distance = typingDistance(wanted, other);
    if (distance >= least) continue;
    least = distance;
    best = candidate;
  }
  return best;
}

/** Restricted Damerau-Levenshtein distance: single changes, with a swap of neighbours counted once. */
function typingDistance(from: string, to: string): number {
  let before: number[] = [];
  let above = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      let distance = Math.min(
        (above[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (above[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped =
        row > 1 &&
        column > 1 &&
        from[row - 1] === to[column - 2] &&
        from[row - 2] === to[column - 1];
      if (swapped) distance = Math.min(distance, (before[column - 2] ?? 0) + 1);
      current.push(distance);
    }
    before = above;
    above = current;
  }
  return above[to.length] ?? 0;
}
