/** One opening on a packing list: its sizes, its order of work, its picture, its bags. */
import type { Bag, BagContent, PackedOpening } from "../../core/bags/bags";
import { isBigPart } from "../../core/bags/bigParts";
import { openingNotes, openingWords } from "../../core/bags/openingNotes";
import type { Picture } from "../../core/base/picture";
import type { Inches } from "../../core/base/units";
import type { SizeText } from "../../core/takeoff/sizeTexts";
import { columnPoints } from "../../workbook/columnSize";
import type { DrawnRow, Look } from "../../workbook/drawing";
import { caution } from "../caution";
import { text, wordsRow } from "../cells";
import { titleRow } from "../fittedRow";
import type { OpeningPicture } from "./elevationOnSheet";
import { checkBox, packingColumns, packingWidths, partRow } from "./packingColumns";
import type { Together } from "./printedPages";
import { wrappedHeight } from "../wrapped";

/** What the list needs to know besides the opening. */
export type PackingWords = {
  readonly show: (length: Inches) => string;
  readonly sizeText: SizeText;
  readonly describe: (item: string) => string;
  /** What was typed about a line, where it was corrected; else the empty text. */
  readonly correctionOf: (content: BagContent) => string;
};

/** The rows of one copy. `pictureRow` is which of them the picture lies over, `null` for none. */
export type PackingBlock = {
  readonly rows: readonly DrawnRow[];
  readonly parts: readonly Together[];
  readonly picture: { readonly row: number; readonly picture: Picture } | null;
};

const width = packingColumns.length;
const widthPoints = packingWidths.reduce((sum, characters) => sum + columnPoints(characters), 0);
export const rowPoints = 15;

/** Copy `copy` of an opening, from 1. */
export function packingBlock(
  opening: PackedOpening,
  copy: number,
  drawn: OpeningPicture | null,
  words: PackingWords,
): PackingBlock {
  const { take, row: at } = opening;
  const head: DrawnRow[] = [
    titleRow(`${copyWords(opening, copy)}: ${take.type.name}`, packingWidths),
    wrappedRow(
      [opening.opening.job, ...openingWords(take, at, words.show)].join(" · "),
      "subtitle",
    ),
    ...openingNotes(take, at, words.show).map(({ level, text: said }) => wrappedRow(said, level)),
  ];
  // Each of these lists is handed to somebody by itself, so each carries the caution.
  head.push(wrappedRow(caution, "caution"));
  let picture: PackingBlock["picture"] = null;
  if (drawn !== null) {
    picture = { row: head.length, picture: drawn.picture };
    head.push({ cells: [], height: Math.ceil(drawn.picture.height) + 8 });
    head.push(wrappedRow(drawn.words, "muted"));
  }
  const bags = opening.bags.map((bag) => bagRows(opening, copy, bag, words));
  const [firstBag = [], ...others] = bags;
  return {
    rows: [...head, ...bags.flat()],
    // The first bag stays with the title, so that no page has nothing but a picture.
    parts: [together([...head, ...firstBag], true), ...others.map((rows) => together(rows, false))],
    picture,
  };
}

/** `A-102`, and `A-102, copy 1 of 2` where several are alike. */
export const copyWords = ({ opening }: PackedOpening, copy: number): string =>
  opening.quantity === 1 ? opening.mark : `${opening.mark}, copy ${copy} of ${opening.quantity}`;

/** `bag 1 of 7: Latch side`. */
export const bagWords = ({ number: nth, of, name }: Bag): string => `bag ${nth} of ${of}: ${name}`;

const bagRows = (
  opening: PackedOpening,
  copy: number,
  bag: Bag,
  words: PackingWords,
): readonly DrawnRow[] => [
  boxedBand(`${copyWords(opening, copy)} · ${bagWords(bag)}`),
  ...bag.contents.map((content) => contentRow(content, words)),
];

function contentRow(content: BagContent, words: PackingWords): DrawnRow {
  const { item, size, pieces } = content;
  const correction = words.correctionOf(content);
  const description = [
    words.describe(item),
    ...(isBigPart(size) ? ["beside the bag"] : []),
    ...(correction === "" ? [] : ["corrected: see the end"]),
  ].join(" · ");
  return partRow({
    pieces,
    item,
    size: words.sizeText({ item, size }),
    description,
    ...(correction === "" ? {} : { style: { look: "note", note: correction } }),
  });
}

/** A bag with its box to tick; its words go to the end of the row, on as many lines as they need. */
export function boxedBand(words: string): DrawnRow {
  const [box = 0] = packingWidths;
  const points = widthPoints - columnPoints(box) - 8;
  return {
    cells: [
      text(checkBox, { look: "group", align: "center" }),
      text(words, { look: "group", span: width - 2, wrap: true }),
    ],
    height: wrappedHeight(words, points, 10, true),
  };
}

/** Words over the whole width, as high as they need. */
export const wrappedRow = (words: string, look: Look): DrawnRow =>
  wordsRow(words, look, width, {
    wrap: true,
    height: wrappedHeight(words, widthPoints - 8, 10),
  });

/** Rows that stay together on a page. */
export const together = (rows: readonly DrawnRow[], startsPage: boolean): Together => ({
  rows: rows.length,
  points: rows.reduce((sum, { height = rowPoints }) => sum + height, 0),
  startsPage,
});
