/** Names of sizes, fields and charts: one spelling for all the ways that people write one name. */
import { typingDistance } from "../base/typingDistance";

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
