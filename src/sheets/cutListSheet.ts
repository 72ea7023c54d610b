/** The cut list: every bar with its pieces and their marks, in words and drawn to scale. */
import type { Mark } from "../core/base/picture";
import { writeLength } from "../core/lengths/writeLength";
import { inchesOf, type CutLength } from "../core/purchasing/cutting/cutLength";
import type { Bar } from "../core/purchasing/cutting/cutProblem";
import { alikeBars, cutPlanWords, pieceWords } from "../core/purchasing/cutting/cutWords";
import type { Drawing, DrawnPicture, DrawnRow } from "../workbook/drawing";
import { headingRow, number, row, text, wordsRow } from "./cells";
import { caution } from "./caution";
import { orderMark, type OrderSheetWish } from "./orderWish";
import { printSetup } from "./printSetup";

const headings = [
  { words: "From", width: 10 },
  { words: "Bar", width: 12, numbers: true },
  { words: "Bars", width: 7, numbers: true },
  { words: "Pieces, each with its marks", width: 64 },
  { words: "Offcut", width: 12, numbers: true },
  { words: "Then", width: 9 },
  { words: "To scale", width: 62 },
] as const;

const pictureColumn = headings.length - 1;
/** Points: what the column of drawings holds, and the height of a row with one. */
const pictureWidth = 320;
const pictureHeight = 18;
const rowHeight = 24;
/** A sheet with more drawings would be slow to open; the words stand in the cells all the same. */
const mostPictures = 150;

export function cutListSheet({
  plan,
  lengths,
  currency,
  number: orderNumber,
}: OrderSheetWish): Drawing {
  const width = headings.length;
  const show = (length: CutLength): string => writeLength(inchesOf(length), lengths);
  const rows: DrawnRow[] = [
    wordsRow("Cut list", "title", width, { height: 26 }),
    wordsRow(caution, "caution", width),
    headingRow(headings),
  ];
  const pictures: DrawnPicture[] = [];
  for (const cuts of plan.cutPlans) {
    rows.push(wordsRow(`${cuts.item}: ${cutPlanWords(cuts, currency)}`, "group", width));
    const longest = Math.max(...cuts.bars.map((bar) => bar.length));
    for (const bars of alikeBars(cuts)) {
      const [bar] = bars;
      if (bar === undefined) continue;
      if (pictures.length < mostPictures) {
        const picture = barPicture(bar, pictureWidth / longest, show);
        pictures.push({ ...picture, row: rows.length, column: pictureColumn });
      }
      rows.push({
        ...row(
          text(bar.from === "stock" ? "new" : "on hand"),
          text(show(bar.length), { align: "right" }),
          number(bars.length, "count"),
          text(pieceWords(bar, show), { wrap: true }),
          text(bar.offcut === 0 ? "" : show(bar.offcut), { align: "right" }),
          text(bar.kept ? "keep" : bar.offcut === 0 ? "" : "scrap"),
          text(""),
        ),
        height: Math.max(rowHeight, 14 * Math.ceil(pieceWords(bar, show).length / 60)),
      });
    }
    for (const { job, mark, length, count } of cuts.unplaced) {
      rows.push(
        wordsRow(`NOT CUT: ${count} of ${show(length)} for ${mark} of ${job}`, "stop", width),
      );
    }
  }
  return {
    name: orderNumber === null ? "Cut list" : `${orderNumber} cut list`,
    mark: orderMark("cut list", orderNumber),
    columnWidths: headings.map((column) => column.width),
    rows,
    frozenRows: 3,
    frozenColumns: 0,
    tables: [],
    choices: [],
    ...(pictures.length === 0 ? {} : { pictures }),
    print: printSetup({
      orientation: "landscape",
      headingRow: 2,
      subject: orderNumber ?? "",
      title: "Cut list",
      caution,
    }),
  };
}

function barPicture(
  bar: Bar,
  pointsPerStep: number,
  show: (length: CutLength) => string,
): Omit<DrawnPicture, "row" | "column"> {
  const marks: Mark[] = [];
  let left = 0;
  for (const { length, mark } of bar.pieces) {
    const width = length * pointsPerStep;
    marks.push({
      kind: "box",
      stroke: "part",
      group: null,
      fill: "solid",
      x: left,
      y: 2,
      width,
      height: pictureHeight - 4,
    });
    const words = width > 5 * mark.length + 4 ? mark : "";
    if (words !== "") {
      const center = { x: left + width / 2, y: pictureHeight / 2 };
      marks.push({ kind: "words", group: null, center, words, size: 8, upright: false });
    }
    left += width;
  }
  marks.push({
    kind: "box",
    stroke: "thin",
    group: null,
    fill: "none",
    x: 0,
    y: 2,
    width: bar.length * pointsPerStep,
    height: pictureHeight - 4,
  });
  return {
    width: Math.max(1, bar.length * pointsPerStep),
    height: pictureHeight,
    marks,
    title: `Bar of ${show(bar.length)}`,
    description: `A bar of ${show(bar.length)}: ${pieceWords(bar, show)}.`,
  };
}
