/**
 * Text files of rows: comma, semicolon or tab between the cells, whatever the encoding.
 *
 * A cell becomes a number only where the number, written plainly, is the very text that stands
 * there: `84`, `-2.5`, `0.75`. So `007`, `1E5`, `12.50`, `+5`, `1,200` and `7-0` stay text, and a mark
 * never changes. Readers of amounts take such texts for what they say. An apostrophe before what a
 * spreadsheet would make a formula of (`'=A1`, `'-x`) only keeps it from that, and is taken off.
 */
import type { CellValue } from "../../core/base/cell";

/** The rows of a text file; a cell with nothing in it is blank. */
export function readCsv(bytes: Uint8Array): readonly (readonly CellValue[])[] {
  const { text, separator } = withoutSeparatorLine(decodeText(bytes));
  return splitRows(text, separator ?? likeliestSeparator(text)).map((cells) =>
    cells.map(cellValue),
  );
}

/** Whether these bytes can be text: none of the control characters that no text has. */
export const isText = (bytes: Uint8Array): boolean =>
  Array.from(decodeText(bytes.subarray(0, 4096)).matchAll(/\p{Cc}/gu)).every(
    ([mark]) => "\t\n\f\r\u001a".includes(mark) || mark >= "\u0080",
  );

function cellValue(text: string): CellValue {
  if (text === "") return null;
  if (/^'+[=+@\t\r-]/.test(text)) return text.slice(1);
  if (!/^-?\d{1,15}(?:\.\d{1,15})?$/.test(text)) return text;
  const number = Number(text);
  return String(number) === text ? number : text;
}

const byteOrderMarks: readonly (readonly [encoding: string, mark: readonly number[]])[] = [
  ["utf-8", [0xef, 0xbb, 0xbf]],
  ["utf-16le", [0xff, 0xfe]],
  ["utf-16be", [0xfe, 0xff]],
];

/** By its byte-order mark; else UTF-16 where every other byte is zero; else UTF-8; else Windows-1252. */
function decodeText(bytes: Uint8Array): string {
  for (const [encoding, mark] of byteOrderMarks) {
    if (mark.every((byte, index) => bytes[index] === byte)) {
      return new TextDecoder(encoding).decode(bytes);
    }
  }
  const zeros = (from: number): number =>
    bytes.subarray(0, 200).filter((byte, index) => index % 2 === from && byte === 0).length;
  const half = Math.min(bytes.length, 200) / 2;
  if (bytes.length > 3 && zeros(1) > half * 0.8) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes.length > 3 && zeros(0) > half * 0.8) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    // The decoder's way of saying that this is not UTF-8.
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** Spreadsheets put `sep=;` on the first line to say what separates the cells. */
function withoutSeparatorLine(text: string): {
  readonly text: string;
  readonly separator?: string;
} {
  const [line = "", separator] = /^sep=(.)(?:\r\n|\r|\n|$)/i.exec(text) ?? [];
  return separator === undefined ? { text } : { text: text.slice(line.length), separator };
}

/**
 * What is quoted, whichever of the three stands around it: a quote at the start of a cell up to one
 * at the end of a cell, `""` within. An inch mark behind a number is neither.
 */
const quotedCell = /(^|[,;\t\r\n])"[^"]*(?:""[^"]*)*"(?=[,;\t\r\n]|$)/g;

/** The one that splits most rows alike, into the most cells; a comma where none splits anything. */
function likeliestSeparator(text: string): string {
  const start = text.slice(0, 50_000).replace(quotedCell, "$1quoted");
  const tried = [",", ";", "\t"].map((separator) => {
    const rows = splitRows(start, separator).filter((cells) => cells.some((cell) => cell !== ""));
    const counts = new Map<number, number>();
    for (const { length } of rows.slice(0, 50)) {
      if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
    }
    const alike = Math.max(0, ...counts.values());
    const cells = [...counts].find(([, count]) => count === alike)?.[0] ?? 0;
    return { separator, alike, cells };
  });
  const best = tried.reduce((one, other) =>
    other.alike > one.alike || (other.alike === one.alike && other.cells > one.cells) ? other : one,
  );
  return best.alike === 0 ? "," : best.separator;
}

/**
 * A quote opens a quoted cell only at the cell's start, so `7'-0"` needs none; one that is never
 * closed is a mark like any other. Rows end with CR, LF or both, and a last empty row is none.
 */
function splitRows(text: string, separator: string): string[][] {
  const rows: string[][] = [];
  let cells: string[] = [];
  let at = 0;
  const end = new RegExp(`[\\r\\n${separator === "\t" ? "\\t" : `\\${separator}`}]`, "g");
  while (at < text.length) {
    const quoted = text[at] === '"' ? readQuoted(text, at) : null;
    end.lastIndex = quoted?.end ?? at;
    const stop = end.exec(text)?.index ?? text.length;
    cells.push((quoted?.text ?? "") + text.slice(quoted?.end ?? at, stop));
    at = stop + 1;
    if (text[stop] === separator) {
      if (at >= text.length) cells.push("");
      continue;
    }
    if (text[stop] === "\r" && text[at] === "\n") at += 1;
    rows.push(cells);
    cells = [];
  }
  return cells.length > 0 ? [...rows, cells] : rows;
}

/** The text between the quote at `start` and its closing one, `""` for `"`; `null` where none closes it. */
function readQuoted(text: string, start: number): { text: string; end: number } | null {
  let from = start + 1;
  let made = "";
  for (;;) {
    const quote = text.indexOf('"', from);
    if (quote < 0) return null;
    made += text.slice(from, quote);
    if (text[quote + 1] !== '"') return { text: made, end: quote + 1 };
    made += '"';
    from = quote + 2;
  }
}
