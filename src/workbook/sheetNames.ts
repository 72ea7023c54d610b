/**
 * Sheet names that every host accepts: 1 to 31 characters, none of `[ ] : * ? / \`, no apostrophe
 * at either end, not `History`, and unlike every other name whatever the case of the letters.
 * (Source: Microsoft's help page on renaming a worksheet.)
 */

const longest = 31;

/** `wanted` made acceptable and unlike every name in `taken`: `Hardware A`, then `Hardware A (2)`. */
export function freeSheetName(wanted: string, taken: Iterable<string>): string {
  const name = acceptableName(wanted);
  const used = new Set(Array.from(taken, plainCase));
  for (let count = 1; ; count++) {
    const tried = withEnding(name, count === 1 ? "" : ` (${count})`);
    if (!used.has(plainCase(tried))) return tried;
  }
}

/** The name for a sheet of ours that is set aside: `Hardware A (kept)`, then `Hardware A (kept 2)`. */
export function keptSheetName(name: string, taken: Iterable<string>): string {
  const used = new Set(Array.from(taken, plainCase));
  for (let count = 1; ; count++) {
    const tried = withEnding(name, count === 1 ? " (kept)" : ` (kept ${count})`);
    if (!used.has(plainCase(tried))) return tried;
  }
}

/** Whether two sheets cannot both have these names. */
export const sameSheetName = (one: string, other: string): boolean =>
  plainCase(one) === plainCase(other);

const plainCase = (name: string): string => name.toLowerCase();

function acceptableName(wanted: string): string {
  const cleaned = wanted
    // Control characters and the forbidden ones become spaces, so that words stay apart.
    .replace(/[\p{Cc}[\]:*?/\\]+/gu, " ")
    .replace(/\s+/g, " ");
  const name = trimEnds(cut(trimEnds(cleaned), longest));
  if (name === "") return "Sheet";
  return plainCase(name) === "history" ? `${name} sheet` : name;
}

const trimEnds = (name: string): string => name.replace(/^[\s']+|[\s']+$/g, "");

const withEnding = (name: string, ending: string): string =>
  cut(name, longest - ending.length).trimEnd() + ending;

/** Cuts to `length` characters, never through the middle of one that takes two code units. */
const cut = (text: string, length: number): string =>
  text.length <= length ? text : text.slice(0, length).replace(/[\ud800-\udbff]$/, "");
