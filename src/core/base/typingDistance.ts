/** How far one text is from another, in what a person would have to type differently. */

/**
 * Restricted Damerau-Levenshtein distance: single changes, with a swap of neighbours counted once.
 * The time grows with the product of the lengths, without what both begin and end with.
 */
export function typingDistance(from: string, to: string): number {
  const shorter = Math.min(from.length, to.length);
  let start = 0;
  while (start < shorter && from.charCodeAt(start) === to.charCodeAt(start)) start += 1;
  let end = 0;
  const isSameFromEnd = (): boolean =>
    from.charCodeAt(from.length - 1 - end) === to.charCodeAt(to.length - 1 - end);
  while (end < shorter - start && isSameFromEnd()) end += 1;
  return distanceOf(from.slice(start, from.length - end), to.slice(start, to.length - end));
}

function distanceOf(from: string, to: string): number {
  if (from === "" || to === "") return from.length + to.length;
  let before: number[] = [];
  let above = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from.charCodeAt(row - 1) === to.charCodeAt(column - 1);
      let distance = Math.min(
        (above[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (above[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped =
        row > 1 &&
        column > 1 &&
        from.charCodeAt(row - 1) === to.charCodeAt(column - 2) &&
        from.charCodeAt(row - 2) === to.charCodeAt(column - 1);
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

/** A text as it is compared: whatever its case and the spaces around and in it. */
export const comparedText = (text: string): string =>
  text.trim().replace(/\s+/g, " ").toLowerCase().slice(0, comparedLength);

/**
 * How alike two texts are, from 0 to 1, whatever the case, the spaces around them and the order in
 * which they are given. Two empty texts are alike.
 */
export const textLikeness = (one: string, other: string): number =>
  comparedLikeness(comparedText(one), comparedText(other));

/** The same of texts that went through `comparedText` before. */
export const comparedLikeness = (one: string, other: string): number =>
  one === other ? 1 : 1 - typingDistance(one, other) / Math.max(one.length, other.length);
