/** The order in which a person looks names up: numbers in them by their size, `A-2` before `A-10`. */

/** Made once: a text's own comparison makes one for each pair. */
const collator = new Intl.Collator("en", { numeric: true });

/** Below zero where `one` comes first. Zero only for the same text; the same on every machine. */
export const compareNames = (one: string, other: string): number =>
  collator.compare(one, other) || (one < other ? -1 : Number(one > other));
