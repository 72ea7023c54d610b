/**
 * The header and footer of a printed page, from the plain text of a drawing to the codes that
 * spreadsheets use (`&L`, `&P`, … as ECMA-376 part 1, 18.3.1.46 lists them).
 */

/** The three places of a header or footer, each with codes and with every plain `&` doubled. */
export type PrintCodes = {
  readonly left: string;
  readonly center: string;
  readonly right: string;
};

const fields: Readonly<Record<string, string>> = {
  "{page}": "&P",
  "{pages}": "&N",
  "{date}": "&D",
  "{sheet}": "&A",
  "{file}": "&F",
};

/**
 * A header holds so many characters with its codes, and so does a footer. (Source: Microsoft's page on
 * Excel specifications and limits.)
 */
const longestHeader = 255;

/**
 * `Job A<tab>{page} of {pages}` puts the job on the left and the page in the middle. Of a text that is
 * too long, the longest of the three is cut.
 */
export function printCodes(text: string): PrintCodes {
  const [left = "", center = "", ...right] = text.split("\t");
  const places = [left, center, right.join(" ")];
  for (;;) {
    const [one = "", two = "", three = ""] = places.map(withCodes);
    const codes = { left: one, center: two, right: three };
    const excess = printCodesText(codes).length - longestHeader;
    if (excess <= 0) return codes;
    const lengths = places.map(({ length }) => length);
    const longest = lengths.indexOf(Math.max(...lengths));
    places[longest] = cutBy(places[longest] ?? "", excess);
  }
}

/** Without the last `count` characters, nor a half of a field or of a character before them. */
const cutBy = (text: string, count: number): string => {
  const kept = text.slice(0, Math.max(0, text.length - count - 1));
  return `${kept.replace(/\{[a-z]*$/, "").replace(/[\ud800-\udbff]$/, "")}…`;
};

const withCodes = (text: string): string =>
  text
    .replaceAll("&", "&&")
    .replace(/\{(?:page|pages|date|sheet|file)\}/g, (field) => fields[field] ?? field)
    // A digit right behind a code would be read as part of it.
    .replace(/(&[PNDAF])(?=\d)/g, "$1 ");

/** The codes as one text, as files keep them; the empty text where there is nothing to print. */
export const printCodesText = ({ left, center, right }: PrintCodes): string =>
  [
    ["&L", left],
    ["&C", center],
    ["&R", right],
  ]
    .map(([place, text]) =>
      text === "" ? "" : `${place}${startsWithDigit(text) ? " " : ""}${text}`,
    )
    .join("");

const startsWithDigit = (text = ""): boolean => /^\d/.test(text);

/** The plain text that codes stand for, the other way round; fonts, sizes and pictures are left out. */
export function printTextOf(codes: string): string {
  const places = new Map([
    ["L", ""],
    ["C", ""],
    ["R", ""],
  ]);
  let place = "C";
  const add = (more: string): void => void places.set(place, (places.get(place) ?? "") + more);
  for (const [piece, code] of codes.matchAll(/&(?:"[^"]*"|\d+ ?|K[0-9A-F]{6}|([\s\S]))|[^&]+/gi)) {
    const letter = code?.toUpperCase() ?? "";
    if (places.has(letter)) place = letter;
    else if (code !== undefined) add(letter === "&" ? "&" : (fieldOf[letter] ?? ""));
    else if (!piece.startsWith("&")) add(piece);
  }
  return Array.from(places.values(), (text) => text.trim())
    .join("\t")
    .trimEnd();
}

const fieldOf: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(fields).map(([field, code]) => [code.slice(1), field]),
);
