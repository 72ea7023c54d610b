/** How wide text comes out in a plain sans-serif, near enough to tell whether it fits. */

/** Widths in ems of a common sans-serif, rounded up; fonts that spreadsheets use are narrower. */
const classes: readonly (readonly [RegExp, number])[] = [
  [/[ijl.,:;'|!]/u, 0.28],
  [/[frt()[\]{}/\\ "\-·`]/u, 0.36],
  [/[MW@%—×]/u, 0.95],
  [/[mw]/u, 0.83],
  [/[A-Z&+=<>~#]/u, 0.72],
  [/[!-\u024f]/u, 0.56],
];
const widest = 1;

/** Points that `text` of that size takes, in one line. A character that is not known counts as an em. */
export function textWidth(text: string, size: number, bold = false): number {
  let ems = 0;
  for (const character of text) ems += emsOf(character);
  return ems * size * (bold ? 1.08 : 1);
}

/** Looked up once for each character: sheets of many rows measure all of their words. */
const known = new Map<string, number>();

function emsOf(character: string): number {
  const before = known.get(character);
  if (before !== undefined) return before;
  const ems = classes.find(([pattern]) => pattern.test(character))?.[1] ?? widest;
  known.set(character, ems);
  return ems;
}
