/**
 * The many characters that people, word processors and drawings use for one thing, made plain.
 *
 * Each character becomes exactly one, so a position in the plain text is the position in the typed
 * text. Then it can be scanned with the `skip` functions, which know ASCII only.
 */
const alike: Readonly<Record<string, string>> = {
  "'": "\u2018\u2019\u201A\u201B\u2032\u2035\u00B4\u0060\u02B9\u02BC\uFF07",
  '"': "\u201C\u201D\u201E\u201F\u2033\u2036\u02BA\u3003\uFF02",
  "-": "\u2010\u2011\u2012\u2013\u2014\u2015\u2212\uFE58\uFE63\uFF0D",
  "/": "\u2044\u2215\uFF0F",
  ",": "\uFF0C",
  ".": "\uFF0E",
  // White space of every width, and marks that show nothing.
  " ": "\t\n\v\f\r\u00A0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200A\u200B\u200E\u200F\u2028\u2029\u202F\u205F\u2060\u3000\uFEFF",
};

const plainForms: ReadonlyMap<string, string> = new Map([
  ...Object.entries(alike).flatMap(([plain, forms]) =>
    Array.from(forms, (form): [string, string] => [form, plain]),
  ),
  ...Array.from("０１２３４５６７８９", (form, digit): [string, string] => [form, String(digit)]),
]);

const outsideAscii = /[^\x20-\x5F\x61-\x7E]/;

/** The text with quotes, dashes, slashes, spaces and digits in their ASCII forms; as long as before. */
export function plainCharacters(text: string): string {
  if (!outsideAscii.test(text)) return text;
  let plain = "";
  for (let at = 0; at < text.length; at += 1) {
    const character = text.charAt(at);
    plain += plainForms.get(character) ?? character;
  }
  return plain;
}

const space = 32;

/** The first place from `at` on that holds no space. */
export function skipSpaces(text: string, at: number): number {
  let end = at;
  while (text.charCodeAt(end) === space) end += 1;
  return end;
}

/** The first place from `at` on that holds no ASCII digit. */
export function skipDigits(text: string, at: number): number {
  let end = at;
  while (isDigit(text.charCodeAt(end))) end += 1;
  return end;
}

/** The first place from `at` on that holds no ASCII letter. */
export function skipLetters(text: string, at: number): number {
  let end = at;
  while (isLetter(text.charCodeAt(end))) end += 1;
  return end;
}

const isDigit = (code: number): boolean => code >= 48 && code <= 57;
// The bit that parts the two cases of a letter is set, so that one range covers both.
const isLetter = (code: number): boolean => (code | 32) >= 97 && (code | 32) <= 122;
