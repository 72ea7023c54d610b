/** How far one text is from another, in what a person would have to type differently. */

/**
 * Restricted Damerau-Levenshtein distance: single changes, with a swap of neighbours counted once.
 * The time grows with the product of the lengths.
 */
export function typingDistance(from: string, to: string): number {
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

/** Longer texts are compared by their first characters. */
const comparedLength = 80;

/**
 * How alike two texts are, from 0 to 1, whatever the case, the spaces around them and the order in
 * which they are given. Two empty texts are alike.
 */
export function textLikeness(one: string, other: string): number {
  const [from, to] = [one, other].map((text) =>
    text.trim().replace(/\s+/g, " ").toLowerCase().slice(0, comparedLength),
  );
  if (from === undefined || to === undefined || from === to) return 1;
  return 1 - typingDistance(from, to) / Math.max(from.length, to.length);
}
