/** How many lines words take, so that a joined cell, which no spreadsheet fits by itself, is high enough. */
import { textWidth } from "../core/base/textWidth";

/** What `textWidth` rounds up. Measured: words in Arial take 0.94 of it and less; other fonts of cells are narrower. */
const cellFont = 0.95;

const cellWidth = (text: string, size: number, bold: boolean): number =>
  textWidth(text, size, bold) * cellFont;

/** The words broken into lines of up to `width` points; a word that is longer is broken in itself. */
export function brokenLines(
  words: string,
  width: number,
  size: number,
  bold = false,
): readonly string[] {
  const long = (text: string): number => cellWidth(text, size, bold);
  const space = long(" ");
  const lines: string[] = [];
  let line = "";
  let taken = 0;
  for (const word of words.split(/\s+/)) {
    if (word === "") continue;
    const more = long(word);
    if (line === "" ? more <= width : taken + space + more <= width) {
      taken += line === "" ? more : space + more;
      line = line === "" ? word : `${line} ${word}`;
      continue;
    }
    if (line !== "") lines.push(line);
    line = "";
    taken = 0;
    for (const character of word) {
      const wide = long(character);
      if (line !== "" && taken + wide > width) {
        lines.push(line);
        line = "";
        taken = 0;
      }
      line += character;
      taken += wide;
    }
  }
  return line === "" && lines.length > 0 ? lines : [...lines, line];
}

/** The words on one line: as many of them as fit, with `…` for the rest. */
export function oneLineOf(words: string, width: number, size: number, bold = false): string {
  const fits = (text: string): boolean => cellWidth(text, size, bold) <= width;
  if (fits(words)) return words;
  const characters = Array.from(words);
  const cut = (count: number): string => `${characters.slice(0, count).join("")}…`;
  // Halved each time, since a cell may hold a whole text of thousands of characters.
  let [kept, tooMany] = [0, characters.length];
  while (tooMany - kept > 1) {
    const count = Math.floor((kept + tooMany) / 2);
    if (fits(cut(count))) kept = count;
    else tooMany = count;
  }
  return `${characters.slice(0, kept).join("").trimEnd()}…`;
}

/** Points from one line to the next. */
export const lineHeight = (size: number): number => size * 1.32;

/** Points of a row of so many lines. */
export const linesHeight = (lines: number, size: number): number =>
  Math.max(15, Math.ceil(lines * lineHeight(size)) + 3);

/** Points of a row that shows the words in full. */
export const wrappedHeight = (words: string, width: number, size: number, bold = false): number =>
  linesHeight(brokenLines(words, width, size, bold).length, size);
