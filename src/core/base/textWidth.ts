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

const emsOf = (character: string): number =>
  classes.find(([pattern]) => pattern.test(character))?.[1] ?? widest;

/** Looked up once for the usual characters: sheets of many rows measure all of their words. */
const usual = Array.from({ length: 0x250 }, (_, code) => emsOf(String.fromCharCode(code)));

/** Points that `text` of that size takes, in one line. A character that is not known counts as an em. */
export function textWidth(text: string, size: number, bold = false): number {
  let ems = 0;
  for (let place = 0; place < text.length; place += 1) {
    const code = text.charCodeAt(place);
    // The second half of a character of two.
    if (code >= 0xdc00 && code <= 0xdfff) continue;
    ems += usual[code] ?? emsOf(text.charAt(place));
  }
  return ems * size * (bold ? 1.08 : 1);
}
