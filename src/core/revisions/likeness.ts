/** How likely two openings are one and the same, whose mark the architect changed. */
import { textLikeness } from "../base/typingDistance";
import type { IssuedOpening } from "./issue";

/** Shares of the whole: what is the same of the sizes and other fields, the type, the mark, the place. */
const weights = { fields: 0.5, type: 0.2, mark: 0.2, place: 0.1 } as const;

/**
 * From 0 to 1, whichever of the two is named first; 0 where it cannot come up to `least`, which is
 * told before the marks are looked at letter by letter.
 */
export function openingLikeness(one: IssuedOpening, other: IssuedOpening, least = 0): number {
  const distance = Math.abs(one.position - other.position);
  const withoutMark =
    weights.fields * sameFields(one, other) +
    weights.type * Number(sameText(one.type, other.type)) +
    weights.place / (1 + distance);
  if (withoutMark + weights.mark < least) return 0;
  return withoutMark + weights.mark * textLikeness(one.mark, other.mark);
}

const sameText = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

/** The share of the fields that either has and both hold the same in; none where neither has any. */
function sameFields({ fields: one }: IssuedOpening, { fields: other }: IssuedOpening): number {
  const names = Object.keys(one);
  const shared = names.filter((name) => Object.hasOwn(other, name));
  const same = shared.filter((name) => one[name] === other[name]);
  const count = names.length + Object.keys(other).length - shared.length;
  return count === 0 ? 0 : same.length / count;
}
