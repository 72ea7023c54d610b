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
  const lines: string[] = [];
  let line = "";
  const fits = (text: string): boolean => cellWidth(text, size, bold) <= width;
  if (!/\s\s|[^\S ]/.test(words) && fits(words)) return [words.trim()];
  for (const word of words.split(/\s+/).filter((each) => each !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = "";
    for (const character of word) {
      if (line !== "" && !fits(line + character)) {
        lines.push(line);
        line = "";
      }
      line += character;
    }
  }
  return line === "" && lines.length > 0 ? lines : [...lines, line];
}

/** The words on one line: as many of them as fit, with `…` for the rest. */
export function oneLineOf(words: string, width: number, size: number, bold = false): string {
  const fits = (text: string): boolean => cellWidth(text, size, bold) <= width;
  if (fits(words)) return words;
  const characters = Array.from(words);
  while (characters.length > 0 && !fits(`${characters.join("")}…`)) characters.pop();
  return `${characters.join("").trimEnd()}…`;
}

/** Points from one line to the next. */
export const lineHeight = (size: number): number => size * 1.32;

/** Points of a row that shows the words in full. */
export const wrappedHeight = (words: string, width: number, size: number, bold = false): number =>
  Math.max(15, Math.ceil(brokenLines(words, width, size, bold).length * lineHeight(size)) + 3);
