/** What stands on the labels of a bag; a bag with more in it than a label holds gets several. */
import type { BagCopy } from "../core/bags/bags";
import { textWidth } from "../core/base/textWidth";
import type { SizeText } from "../core/takeoff/sizeTexts";
import { bagWords } from "./packingOpening";
import { brokenLines, lineHeight } from "./wrapped";

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

/** How high each of a label's three rows is, alike for all labels of a sheet. */
export type LabelRows = {
  readonly title: number;
  readonly words: number;
  /** Lines of contents, one or more. */
  readonly lines: number;
};

const mostTitleLines = 2;
const mostWordsLines = 3;

/** The rows that show the titles and words of all `bags` in full, so far as a label has room. */
export function labelRows(bags: Iterable<BagCopy>, job: string, room: LabelRoom): LabelRows {
  let [titleLines, wordsLines] = [1, 1];
  for (const bag of bags) {
    titleLines = Math.max(titleLines, titleLinesOf(bag, room).length);
    wordsLines = Math.max(
      wordsLines,
      brokenLines(wordsOf(bag, job), room.width, labelLetters.words).length,
    );
  }
  const title = Math.min(titleLines, mostTitleLines) * lineHeight(labelLetters.title);
  const words = Math.min(wordsLines, mostWordsLines) * lineHeight(labelLetters.words);
  const left = room.height - title - words;
  return { title, words, lines: Math.max(1, Math.floor(left / lineHeight(labelLetters.words))) };
}

/** The labels of one bag, in order. */
export function bagLabels(
  bag: BagCopy,
  job: string,
  room: LabelRoom,
  { lines }: LabelRows,
  sizeText: SizeText,
): readonly LabelText[] {
  const { bag: packed } = bag;
  const entries = packed.contents.map(({ item, size, pieces }) => {
    const cut = sizeText({ item, size });
    return `${pieces} × ${item}${cut === "" ? "" : `, ${cut}`}`;
  });
  const all = flowed(entries, room.width);
  const labels = Math.ceil(all.length / lines);
  const title = titleLinesOf(bag, room).join("\n");
  return Array.from({ length: labels }, (_, index) => ({
    title,
    words: `${wordsOf(bag, job)}${labels === 1 ? "" : ` · label ${index + 1} of ${labels}`}`,
    contents: all.slice(index * lines, (index + 1) * lines),
  }));
}

function titleLinesOf({ opening, bag }: BagCopy, { width }: LabelRoom): readonly string[] {
  const [nth = ""] = bagWords(bag).split(":");
  const mark = opening.opening.mark;
  const together = `${mark} · ${nth}`;
  const size = labelLetters.title;
  if (textWidth(together, size, true) <= width) return [together];
  // The number of the bag has a line of its own; a mark longer than a line is shortened there.
  const [first = "", ...more] = brokenLines(mark, width, size, true);
  return [more.length === 0 ? first : `${first.slice(0, -1)}…`, nth];
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
