/** The reasons sheet: one row for each part of each opening, with how its number came about. */
import type { Steps } from "../../core/base/steps";
import type { Inches } from "../../core/base/units";
import { correctionWords, type CorrectedLine } from "../../core/corrections/correctedLine";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { writeLength, type LengthStyle } from "../../core/lengths/writeLength";
import { because, quantityOf } from "../../core/takeoff/explain";
import { sizeTexts } from "../../core/takeoff/sizeTexts";
import { countsIn, openingAt } from "../../core/takeoff/take";
import type { DrawnCell, Drawing, DrawnRow } from "../../workbook/drawing";
import { caution } from "../caution";
import { blank, headingRow, number, row, text, wordsRow } from "../cells";
import { fittedRow, titleRow } from "../fittedRow";
import { printSetup } from "../printSetup";

/** A sheet with more rows than this is no help to a person, and slow in every spreadsheet. */
const mostRows = 50_000;

const headings = [
  { words: "Job", width: 27 },
  { words: "Item", width: 19 },
  { words: "Size", width: 19 },
  { words: "Mark", width: 12 },
  { words: "Quantity (pcs)", width: 10, numbers: true },
  { words: "Bag", width: 18 },
  { words: "Because", width: 101 },
] as const;

const widths: readonly number[] = headings.map(({ width }) => width);

const fitted = (...cells: readonly DrawnCell[]): DrawnRow => fittedRow(row(...cells), widths);

/** Rows that are drawn in one step. */
const rowsInStep = 500;

/** A row for each count, and one for what was typed about the line. */
const reasonsOf = ({ counts, typed }: CorrectedLine): number =>
  counts.reduce((rows, column) => rows + column.rows.length, typed === null ? 0 : 1);

/** All counts of the jobs, line by line in the hardware sheet's order. */
export function* drawReasons(jobs: readonly JobEstimate[], lengths: LengthStyle): Steps<Drawing> {
  const show = (length: Inches): string => writeLength(length, lengths);
  const width = headings.length;
  const all = jobs
    .flatMap((job) => job.corrections.lines)
    .reduce((sum, line) => sum + reasonsOf(line), 0);
  const rows: DrawnRow[] = [
    titleRow("Reasons", widths),
    wordsRow(
      "Why each number is what it is: the kit-book row, its formula, the numbers put in.",
      "subtitle",
      width,
    ),
    fittedRow(headingRow(headings), widths),
  ];
  const heading = rows.length - 1;
  for (const { job, takeOff, material } of jobs) {
    const sizeText = sizeTexts(takeOff.lines, lengths);
    for (const { line } of material.lines) {
      for (const count of countsIn(line.counts)) {
        if (rows.length - heading > mostRows) break;
        if (rows.length % rowsInStep === 0) yield rows.length / Math.min(all, mostRows);
        rows.push(
          fitted(
            text(job),
            text(line.item),
            text(sizeText(line), { align: "right" }),
            text(openingAt(count.take, count.row).mark),
            number(quantityOf(count), "count"),
            text(count.part.bag),
            text(because(count, show)),
          ),
        );
      }
      if (line.typed === null || rows.length - heading > mostRows) continue;
      rows.push(
        fitted(
          text(job),
          text(line.item),
          text(sizeText(line), { align: "right" }),
          blank(),
          number(line.quantity - line.counted, "count"),
          blank(),
          text(`Typed on the hardware sheet: ${correctionWords(line)}`, { look: "note" }),
        ),
      );
    }
  }
  if (all > mostRows) {
    const words = `${all - mostRows} more reasons are not written here. Take off fewer jobs at once to see them all.`;
    rows.push(wordsRow(words, "warn", width));
  }
  return {
    name: "Reasons",
    mark: { kind: "reasons", subject: "" },
    columnWidths: widths,
    rows,
    frozenRows: heading + 1,
    frozenColumns: 2,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: "",
      title: "Reasons",
      caution,
    }),
  };
}
