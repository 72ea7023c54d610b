/** Entries by key, keys in the order of their first entry and entries in theirs. */
export function groupBy<Key, Entry>(
  all: readonly Entry[],
  keyOf: (each: Entry) => Key,
): ReadonlyMap<Key, readonly Entry[]> {
  const groups = new Map<Key, Entry[]>();
  for (const each of all) {
    const key = keyOf(each);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [each]);
    else group.push(each);
  }
  return groups;
}
