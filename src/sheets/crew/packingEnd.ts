/** The end of a packing list: what belongs to the job as a whole, its corrections and its spares. */
import { correctedContents } from "../../core/bags/jobBag";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { DrawnRow } from "../../workbook/drawing";
import { titleRow } from "../fittedRow";
import { packingWidths, partRow } from "./packingColumns";
import { boxedBand, type PackingWords } from "./packingOpening";

/** The rows; none where a job has neither. */
export function packingEnd(
  { job, material }: JobEstimate,
  words: PackingWords,
): readonly DrawnRow[] {
  const corrected = correctedContents(material.lines.map(({ line }) => line));
  const spares = material.lines.filter((line) => line.spares > 0);
  if (corrected.length === 0 && spares.length === 0) return [];
  return [
    titleRow(`${job}: for the whole job`, packingWidths),
    ...(corrected.length === 0
      ? []
      : [
          boxedBand("Corrections typed by hand; below zero is to be taken out of the bags above"),
          ...corrected.map(({ item, size, pieces, why }) =>
            partRow({ pieces, item, size: words.sizeText({ item, size }), description: why }),
          ),
        ]),
    ...(spares.length === 0
      ? []
      : [
          boxedBand("Spares, in one bag"),
          ...spares.map(({ line: { item, size }, spares: pieces }) =>
            partRow({
              pieces,
              item,
              size: words.sizeText({ item, size }),
              description: words.describe(item),
            }),
          ),
        ]),
  ];
}
