/**
 * The packing list: a page or more for each opening, one for each of those alike, with its picture,
 * its order of work, and its bags in that order with a box to tick for every part.
 */
import { packJob, type PackedOpening } from "../../core/bags/bags";
import { correctionWords } from "../../core/corrections/correctedLine";
import type { Steps } from "../../core/base/steps";
import type { Inches } from "../../core/base/units";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { writeLength, type LengthStyle } from "../../core/lengths/writeLength";
import { itemKey, type Items } from "../../core/pricing/item";
import { pieceKey } from "../../core/takeoff/partColumn";
import { sizeTexts } from "../../core/takeoff/sizeTexts";
import type { Drawing, DrawnPicture, DrawnRow } from "../../workbook/drawing";
import { headingRow } from "../cells";
import { openingPicture, type OpeningPicture } from "./elevationOnSheet";
import { titleRow } from "../fittedRow";
import { notCompleteWords } from "../jobWords";
import { packingColumns, packingWidths } from "./packingColumns";
import { packingEnd } from "./packingEnd";
import { packingBlock, rowPoints, together, wrappedRow, type PackingWords } from "./packingOpening";
import { pageBreaks, pageHeight, type Together } from "./printedPages";
import { printSetup } from "../printSetup";

export type PackingWish = {
  readonly jobs: readonly JobEstimate[];
  readonly items: Items;
  readonly lengths: LengthStyle;
};

/** A sheet with more rows, or more pictures, is no help to a person and slow in every spreadsheet. */
const mostRows = 50_000;
const mostPictures = 400;

/** One drawing with the openings of all jobs of the wish, an opening a step. */
export function* drawPacking({ jobs, items, lengths }: PackingWish): Steps<Drawing> {
  const [first] = jobs;
  const subject = jobs.length === 1 && first !== undefined ? first.job : "";
  const show = (length: Inches): string => writeLength(length, lengths);
  const rows: DrawnRow[] = [
    titleRow(subject === "" ? "Packing list" : `Packing list: ${subject}`, packingWidths),
    wrappedRow(
      "Each opening starts a page. Its bags come in its order of work; tick a part when it is in its bag, and a bag when it is on site.",
      "subtitle",
    ),
    ...jobs.flatMap(notCompleteWords).map((words) => wrappedRow(words, "stop")),
    { ...headingRow(packingColumns), height: 18 },
  ];
  const heading = rows.length - 1;
  const room = {
    first: heading + 1,
    used: together(rows, false).points,
    repeated: rows[heading]?.height ?? rowPoints,
    page: pageHeight(packingWidths),
  };
  const pictures: DrawnPicture[] = [];
  const parts: Together[] = [];
  let left = 0;
  for (const [index, job] of jobs.entries()) {
    const words = wordsFor(job, items, lengths, show);
    const bags = packJob(job.takeOff);
    for (const opening of bags.openings) {
      yield index / jobs.length;
      const taken = parts.length === 0 ? room.used : room.repeated;
      const drawn = pictureOnPage(opening, words, room.page - taken);
      for (let copy = 1; copy <= opening.opening.quantity; copy += 1) {
        if (rows.length > mostRows) {
          left += opening.opening.quantity - copy + 1;
          break;
        }
        const fits: OpeningPicture | null = pictures.length < mostPictures ? drawn : null;
        const block = packingBlock(opening, copy, fits, words);
        if (block.picture !== null) {
          const { row, picture } = block.picture;
          pictures.push({ ...picture, row: rows.length + row, column: 0 });
        }
        rows.push(...block.rows);
        parts.push(...block.parts);
      }
    }
    for (const { mark } of bags.empty) {
      const none = [wrappedRow(`${mark} needs no part.`, "note")];
      rows.push(...none);
      parts.push(together(none, false));
    }
    const end = packingEnd(job, words);
    rows.push(...end);
    if (end.length > 0) parts.push(together(end, true));
  }
  if (left > 0) {
    const words = `NOT COMPLETE. ${left} more openings are not written here. Pack fewer jobs at once to see them all.`;
    rows.push(wrappedRow(words, "stop"));
  }
  const breaks = pageBreaks(parts, room);
  return {
    name: subject === "" ? "Packing" : `Packing ${subject}`,
    mark: { kind: "packing", subject },
    columnWidths: packingWidths,
    rows,
    frozenRows: heading + 1,
    frozenColumns: 0,
    tables: [],
    choices: [],
    pictures,
    print: printSetup({
      headingRow: heading,
      breaksBefore: breaks,
      subject,
      title: "Packing list",
      caution: "",
    }),
  };
}

/** A picture is made lower by no more than this, or it could not be read. */
const mostLower = 100;

/** As large as leaves room for the first bag on its page of `room` points. */
function pictureOnPage(opening: PackedOpening, words: PackingWords, room: number): OpeningPicture {
  const drawn = openingPicture(opening, words.show);
  const [first] = packingBlock(opening, 1, drawn, words).parts;
  const over = Math.ceil((first?.points ?? 0) - room);
  return over <= 0 || over > mostLower ? drawn : openingPicture(opening, words.show, over);
}

function wordsFor(
  job: JobEstimate,
  items: Items,
  lengths: LengthStyle,
  show: (length: Inches) => string,
): PackingWords {
  const lines = job.material.lines.map(({ line }) => line);
  const corrected = new Map(
    lines
      .filter(({ change }) => change !== null)
      .map((line) => [pieceKey(line.item, line.size), correctionWords(line)]),
  );
  return {
    show,
    sizeText: sizeTexts(lines, lengths),
    describe: (item) => items.get(itemKey(item))?.description ?? "Not in the items table",
    correctionOf: ({ item, size }) => corrected.get(pieceKey(item, size)) ?? "",
  };
}
