/** The rows of a loading list. */
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { MeasureStyle } from "../../core/measures/measures";
import { shownAmount } from "../../core/measures/writeMeasure";
import { columnPoints } from "../../workbook/columnSize";
import type { DrawnRow } from "../../workbook/drawing";
import { bandRow, formula, number, row, text } from "../cells";
import { fittedRow, joinedRow } from "../fittedRow";
import type { Load } from "../owner/loads";
import { loadingColumns, loadingWidths, piecesColumn, weightColumn } from "./loadingColumns";
import { checkBox } from "./packingColumns";
import { sumOf } from "../reference";
import { wrappedHeight } from "../wrapped";

const width = loadingColumns.length;

/** The row of one load, as high as its words need. */
export function loadRows({ what, mark, size, pieces, weight }: Load): readonly DrawnRow[] {
  const high = ([1, 2] as const).map((column) =>
    wrappedHeight(column === 1 ? what : mark, columnPoints(loadingColumns[column].width) - 6, 10),
  );
  const cells = row(
    text(checkBox, { align: "center" }),
    text(what, { wrap: true }),
    text(mark, { wrap: true }),
    text(size, { align: "right" }),
    number(pieces, "count"),
    weight === null
      ? text("not weighed", { look: "warn", align: "right" })
      : number(weight, "weight"),
  );
  return [{ ...cells, height: Math.max(...high) }];
}

/** Live sums over the rows `counted`, and the number that the hardware list orders, beside each other. */
export function totalRows(
  { job, material }: JobEstimate,
  loads: readonly Load[],
  counted: readonly number[],
  style: MeasureStyle,
): readonly DrawnRow[] {
  const pieces = loads.reduce((sum, load) => sum + load.pieces, 0);
  const weight = loads.reduce((sum, load) => sum + (load.weight ?? 0), 0);
  const ordered = material.lines.reduce((sum, line) => sum + line.toOrder, 0);
  const { unweighed } = material;
  return [
    fittedRow(
      bandRow("total", width, {
        1: text(`${job}: all that is loaded`),
        [piecesColumn]: formula(sumOf(piecesColumn, counted), pieces, "count"),
        [weightColumn]: formula(sumOf(weightColumn, counted), weight, "weight"),
      }),
      loadingWidths,
    ),
    bandRow("muted", width, {
      1: text("To order by the hardware list, spares included"),
      [piecesColumn]: number(ordered, "count"),
      [weightColumn]: number(shownAmount(material.weight, "weight", style), "weight"),
    }),
    ...(unweighed.length === 0
      ? []
      : [
          joinedRow(
            `Not weighed, and not in the total: ${unweighed.join(", ")}`,
            "warn",
            loadingWidths,
          ),
        ]),
  ];
}
