/** The order in which a person looks names up: numbers in them by their size, `A-2` before `A-10`. */

/** Below zero where `one` comes first. Zero only for the same text; the same on every machine. */
export const compareNames = (one: string, other: string): number =>
  one.localeCompare(other, "en", { numeric: true }) || (one < other ? -1 : Number(one > other));
