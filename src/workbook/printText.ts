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

/** `Job A<tab>{page} of {pages}` puts the job on the left and the page in the middle. */
export function printCodes(text: string): PrintCodes {
  const [left = "", center = "", ...right] = text.split("\t").map(withCodes);
  return { left, center, right: right.join(" ") };
}

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
