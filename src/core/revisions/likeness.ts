/** How likely two openings are one and the same, whose mark the architect changed. */
import { textLikeness } from "../base/typingDistance";
import type { IssuedOpening } from "./issue";

/** Shares of the whole: what is the same of the sizes and other fields, the type, the mark, the place. */
const weights = { fields: 0.5, type: 0.2, mark: 0.2, place: 0.1 } as const;

/** From 0 to 1, whichever of the two is named first. */
export function openingLikeness(one: IssuedOpening, other: IssuedOpening): number {
  const distance = Math.abs(one.position - other.position);
  return (
    weights.fields * sameFields(one, other) +
    weights.type * Number(sameText(one.type, other.type)) +
    weights.mark * textLikeness(one.mark, other.mark) +
    weights.place / (1 + distance)
  );
}

const sameText = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

/** The share of the fields that either has and both hold the same in; none where neither has any. */
function sameFields({ fields: one }: IssuedOpening, { fields: other }: IssuedOpening): number {
  const names = new Set([...Object.keys(one), ...Object.keys(other)]);
  const same = [...names].filter(
    (name) => Object.hasOwn(one, name) && Object.hasOwn(other, name) && one[name] === other[name],
  );
  return names.size === 0 ? 0 : same.length / names.size;
}
