/** The take-off as one JSON object, for other programs. Its shape is fixed; README has it. */
import { findingCell } from "../../core/base/finding";
import type { Inches } from "../../core/base/units";
import { correctionWords, type CorrectedLine } from "../../core/corrections/correctedLine";
import { decimalText } from "../../core/money/writeMoney";
import { numberStyle, writeLength, writeSize } from "../../core/lengths/writeLength";
import { because, quantityOf } from "../../core/takeoff/explain";
import { countsIn, openingAt } from "../../core/takeoff/take";
import { lengthStyleOf, type Settings } from "../../app/settings";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";

/** What a person typed about a line, so that its reasons add up to its quantity. */
const typedReason = (line: CorrectedLine) =>
  line.typed === null
    ? []
    : [
        {
          mark: "",
          bag: "",
          quantity: line.quantity - line.counted,
          because: `typed on the hardware sheet: ${correctionWords(line)}`,
        },
      ];

/** Sizes are plain numbers in the unit of the schedule: `48 x 84`, or millimetres. */
export function takeOffJson({ estimate, findings, complete }: WorkbookTakeOff, settings: Settings) {
  const style = lengthStyleOf(settings);
  const show = (length: Inches): string => writeLength(length, style);
  const sizeText = (size: readonly Inches[]): string | null => {
    if (size.length === 0) return null;
    if (settings.unit === "in") return writeSize(size, numberStyle);
    return writeSize(size, { kind: "mm" }).replaceAll(" mm", "");
  };
  return {
    complete,
    jobs: estimate.jobs.map(({ job, rows, material }) => ({
      job,
      openings: rows,
      lines: material.lines.map(({ line, item }) => ({
        item: line.item,
        size: sizeText(line.size),
        description: item?.description ?? "",
        unit: "each",
        quantity: line.quantity,
        reasons: [
          ...Array.from(countsIn(line.counts), (count) => ({
            mark: openingAt(count.take, count.row).mark,
            bag: count.part.bag,
            quantity: quantityOf(count),
            because: because(count, show),
          })),
          ...typedReason(line),
        ],
      })),
      material: {
        total: material.total === null ? null : decimalText(material.total),
        unpriced: material.unpriced,
      },
    })),
    findings: findings.map((finding) => ({
      code: finding.code,
      level: finding.level,
      cell: findingCell(finding),
      found: finding.found,
      message: finding.message,
    })),
  };
}
