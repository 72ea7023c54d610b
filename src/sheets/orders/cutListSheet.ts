/** The cut list: every bar with its pieces and their marks, in words and drawn to scale. */
import { writeLength } from "../../core/lengths/writeLength";
import { inchesOf, type CutLength } from "../../core/purchasing/cutting/cutLength";
import { alikeBars, cutPlanWords, pieceWords } from "../../core/purchasing/cutting/cutWords";
import type { Drawing, DrawnPicture, DrawnRow } from "../../workbook/drawing";
import { headingRow, number, row, text, wordsRow } from "../cells";
import { barPicture } from "./barPicture";
import { caution } from "../caution";
import { fittedRow } from "../fittedRow";
import { orderMark, type OrderSheetWish } from "./orderWish";
import { printSetup } from "../printSetup";

const headings = [
  { words: "From", width: 10 },
  { words: "Bar", width: 12, numbers: true },
  { words: "Bars", width: 7, middle: true },
  { words: "Pieces, each with its job and mark", width: 76 },
  { words: "Offcut", width: 12, numbers: true },
  { words: "Then", width: 9, middle: true },
  { words: "To scale", width: 62 },
] as const;

const widths = headings.map((column) => column.width);
const pictureColumn = headings.length - 1;
/** Points: what the column of drawings holds, and what is free above and below one. */
const pictureWidth = 320;
const pictureRoom = 6;
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
      const words = pieceWords(bar, show);
      const picture = barPicture(bar, pictureWidth / longest, {
        title: `Bar of ${show(bar.length)}`,
        description: `A bar of ${show(bar.length)}: ${words}.`,
      });
      if (pictures.length < mostPictures) {
        pictures.push({ ...picture, row: rows.length, column: pictureColumn });
      }
      const cells = row(
        text(bar.from === "stock" ? "new" : "on hand"),
        text(show(bar.length), { align: "right" }),
        number(bars.length, "count", { align: "center" }),
        text(words),
        text(bar.offcut === 0 ? "" : show(bar.offcut), { align: "right" }),
        text(bar.kept ? "keep" : bar.offcut === 0 ? "" : "scrap", { align: "center" }),
        text(""),
      );
      const fitted = fittedRow(cells, widths);
      rows.push({ ...fitted, height: Math.max(picture.height + pictureRoom, fitted.height ?? 0) });
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
    columnWidths: widths,
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
