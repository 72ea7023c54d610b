/** How likely two openings are one and the same, whose mark the architect changed. */
import { comparedText, comparedLikeness } from "../base/typingDistance";
import type { IssuedOpening } from "./issue";

/** Shares of the whole: what is the same of the sizes and other fields, the type, the mark, the place. */
const weights = { fields: 0.5, type: 0.2, mark: 0.2, place: 0.1 } as const;

/** Fields that some openings have alike, and how alike they are to those of others, once it is known. */
type FieldSet = {
  readonly fields: IssuedOpening["fields"];
  readonly alike: Map<FieldSet, number>;
};

/** An opening made ready to be compared with many. */
export type ComparedOpening = {
  readonly mark: string;
  readonly type: string;
  readonly position: number;
  readonly set: FieldSet;
};

/** Makes openings ready that are compared with each other. */
export function readyToCompare(): (opening: IssuedOpening) => ComparedOpening {
  const sets = new Map<string, FieldSet>();
  return ({ mark, type, position, fields }) => {
    const key = JSON.stringify(fields);
    const set = sets.get(key) ?? { fields, alike: new Map() };
    sets.set(key, set);
    return { mark: comparedText(mark), type: type.toLowerCase(), position, set };
  };
}

/**
 * From 0 to 1, whichever of the two is named first; 0 where it cannot come up to `least`, which is
 * told before the marks are looked at letter by letter.
 */
export function openingLikeness(
  one: ComparedOpening,
  other: ComparedOpening,
  least: number,
): number {
  const distance = Math.abs(one.position - other.position);
  const withoutMark =
    weights.fields * alikeSets(one.set, other.set) +
    weights.type * Number(one.type === other.type) +
    weights.place / (1 + distance);
  if (withoutMark + weights.mark < least) return 0;
  return withoutMark + weights.mark * comparedLikeness(one.mark, other.mark);
}

function alikeSets(one: FieldSet, other: FieldSet): number {
  const known = one.alike.get(other);
  if (known !== undefined) return known;
  const share = sameFields(one.fields, other.fields);
  one.alike.set(other, share);
  return share;
}

/** The share of the fields that either has and both hold the same in; none where neither has any. */
function sameFields(one: IssuedOpening["fields"], other: IssuedOpening["fields"]): number {
  const names = Object.keys(one);
  const shared = names.filter((name) => Object.hasOwn(other, name));
  const same = shared.filter((name) => one[name] === other[name]);
  const count = names.length + Object.keys(other).length - shared.length;
  return count === 0 ? 0 : same.length / count;
}
