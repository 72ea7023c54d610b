/** Work that is not done again for what it was done for last. */

/**
 * `make`, answering from memory when every argument is the one of the last call, or a list of the
 * same things in the same order.
 */
export function onceForSame<Given extends readonly unknown[], Made>(
  make: (...given: Given) => Made,
): (...given: Given) => Made {
  let last: { readonly given: Given; readonly made: Made } | null = null;
  return (...given) => {
    if (last !== null && isSameList(last.given, given, isSame)) return last.made;
    last = { given, made: make(...given) };
    return last.made;
  };
}

const isSame = (one: unknown, other: unknown): boolean =>
  Object.is(one, other) ||
  (Array.isArray(one) && Array.isArray(other) && isSameList(one, other, Object.is));

const isSameList = (
  one: readonly unknown[],
  other: readonly unknown[],
  isSameItem: (one: unknown, other: unknown) => boolean,
): boolean =>
  one.length === other.length && one.every((item, index) => isSameItem(item, other[index]));
