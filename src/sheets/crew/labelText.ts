/** What stands on the labels of a bag; a bag with more in it than a label holds gets several. */
import type { BagCopy } from "../../core/bags/bags";
import { textWidth } from "../../core/base/textWidth";
import type { SizeText } from "../../core/takeoff/sizeTexts";
import { bagWords } from "./packingOpening";
import { brokenLines, lineHeight, oneLineOf } from "../wrapped";

/** Points, for letters and for the room that a label has. */
export const labelLetters = { title: 11, words: 8 } as const;

export type LabelRoom = {
  /** Points between the paddings of a label. */
  readonly width: number;
  readonly height: number;
};

export type LabelText = {
  /** The mark and which of the bags. */
  readonly title: string;
  /** The bag's name, its copy, the job. */
  readonly words: string;
  /** The contents, broken into lines. */
  readonly contents: readonly string[];
};

/** How many lines each of a label's three rows has, alike for all labels of a sheet. */
export type LabelRows = {
  readonly title: number;
  readonly words: number;
  /** One or more. */
  readonly contents: number;
};

/** Points of the rows above the contents. */
export const titleHeight = ({ title }: LabelRows): number => title * lineHeight(labelLetters.title);
export const wordsHeight = ({ words }: LabelRows): number => words * lineHeight(labelLetters.words);

/**
 * The rows that show the titles and words of all `bags` in full. Where a label has no room for that,
 * first the words and then the title get fewer lines, and end in `…`; one line of contents stays.
 */
export function labelRows(bags: Iterable<BagCopy>, job: string, room: LabelRoom): LabelRows {
  let rows: LabelRows = { title: 1, words: 1, contents: 1 };
  for (const bag of bags) {
    const words = `${wordsOf(bag, job)}${nthLabel(9, 9)}`;
    rows = {
      ...rows,
      title: Math.max(rows.title, titleLinesOf(bag, room).length),
      words: Math.max(rows.words, brokenLines(words, room.width, labelLetters.words).length),
    };
  }
  const left = (): number =>
    Math.floor(
      (room.height - titleHeight(rows) - wordsHeight(rows)) / lineHeight(labelLetters.words),
    );
  while (left() < 1 && rows.words > 1) rows = { ...rows, words: rows.words - 1 };
  while (left() < 1 && rows.title > 1) rows = { ...rows, title: rows.title - 1 };
  return { ...rows, contents: Math.max(1, left()) };
}

/** The labels of one bag, in order. */
export function bagLabels(
  bag: BagCopy,
  job: string,
  room: LabelRoom,
  rows: LabelRows,
  sizeText: SizeText,
): readonly LabelText[] {
  const entries = bag.bag.contents.map(({ item, size, pieces }) => {
    const cut = sizeText({ item, size });
    return `${pieces} × ${item}${cut === "" ? "" : `, ${cut}`}`;
  });
  const all = flowed(entries, room.width);
  const labels = Math.ceil(all.length / rows.contents);
  const title = titleLinesOf(bag, room);
  return Array.from({ length: labels }, (_, index) => {
    const words = `${wordsOf(bag, job)}${labels === 1 ? "" : nthLabel(index + 1, labels)}`;
    return {
      title: (title.length > rows.title ? oneLine(bag, room) : title).join("\n"),
      words: shortened(words, rows.words, room),
      contents: all.slice(index * rows.contents, (index + 1) * rows.contents),
    };
  });
}

const nthLabel = (nth: number, of: number): string => ` · label ${nth} of ${of}`;

/** On so many lines as there is room for, the last of them ending in `…` where that is not all. */
function shortened(words: string, most: number, { width }: LabelRoom): string {
  const lines = brokenLines(words, width, labelLetters.words);
  if (lines.length <= most) return words;
  const last = oneLineOf(lines.slice(most - 1).join(" "), width, labelLetters.words);
  return [...lines.slice(0, most - 1), last].join(" ");
}

const numberOf = ({ bag }: BagCopy): string => bagWords(bag).split(":")[0] ?? "";

/** The mark and the number of the bag, on two lines where they do not fit on one. */
function titleLinesOf(bag: BagCopy, { width }: LabelRoom): readonly string[] {
  const { mark } = bag.opening.opening;
  const together = `${mark} · ${numberOf(bag)}`;
  if (textWidth(together, labelLetters.title, true) <= width) return [together];
  return [oneLineOf(mark, width, labelLetters.title, true), numberOf(bag)];
}

/** The same on one line: as much of the mark as there is room for. */
function oneLine(bag: BagCopy, { width }: LabelRoom): readonly string[] {
  const nth = ` · ${numberOf(bag)}`;
  const room = width - textWidth(nth, labelLetters.title, true);
  return [oneLineOf(bag.opening.opening.mark, room, labelLetters.title, true) + nth];
}

const wordsOf = ({ copy, of, bag }: BagCopy, job: string): string =>
  [bag.name, ...(of === 1 ? [] : [`copy ${copy} of ${of}`]), job].join(" · ");

const between = "   ";

/** Entries one after the other, several on a line where they fit; one longer than a line is broken. */
function flowed(entries: readonly string[], width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const entry of entries) {
    const longer = line === "" ? entry : line + between + entry;
    if (textWidth(longer, labelLetters.words) <= width) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    const broken = brokenLines(entry, width, labelLetters.words);
    lines.push(...broken.slice(0, -1));
    line = broken.at(-1) ?? "";
  }
  return line === "" ? lines : [...lines, line];
}
