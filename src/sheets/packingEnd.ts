/** The end of a packing list: what belongs to the job as a whole, its corrections and its spares. */
import { correctedContents } from "../core/bags/jobBag";
import type { JobEstimate } from "../core/estimate/jobEstimate";
import type { DrawnRow } from "../workbook/drawing";
import { bandRow, number, row, text, wordsRow } from "./cells";
import { checkBox, packingColumns, packingWidths } from "./packingColumns";
import { rowPoints, type PackingWords } from "./packingOpening";
import { columnPoints } from "./printedPages";
import { wrappedHeight } from "./wrapped";

const width = packingColumns.length;

/** The rows; none where a job has neither. */
export function packingEnd(
  { job, material }: JobEstimate,
  words: PackingWords,
): readonly DrawnRow[] {
  const corrected = correctedContents(material.lines.map(({ line }) => line));
  const spares = material.lines.filter((line) => line.spares > 0);
  if (corrected.length === 0 && spares.length === 0) return [];
  const line = (pieces: number, item: string, size: string, said: string): DrawnRow => ({
    ...row(
      text(checkBox, { align: "center", wrap: true }),
      number(pieces, "count", { align: "center", wrap: true }),
      text(item, { wrap: true }),
      text(size, { wrap: true }),
      text(said, { wrap: true }),
    ),
    height: wrappedHeight(said, columnPoints(packingWidths[width - 1] ?? 0) - 6, 10),
  });
  const band = (said: string): DrawnRow => ({
    ...bandRow("group", width, { 0: text(checkBox, { align: "center" }), 1: text(said) }),
    height: rowPoints + 2,
  });
  return [
    wordsRow(`${job}: for the whole job`, "title", width, { height: 26 }),
    ...(corrected.length === 0
      ? []
      : [
          band("Corrections typed by hand; below zero is to be taken out of the bags above"),
          ...corrected.map(({ item, size, pieces, why }) =>
            line(pieces, item, words.sizeText({ item, size }), why),
          ),
        ]),
    ...(spares.length === 0
      ? []
      : [
          band("Spares, in one bag"),
          ...spares.map(({ line: { item, size }, spares: pieces }) =>
            line(pieces, item, words.sizeText({ item, size }), words.describe(item)),
          ),
        ]),
  ];
}
