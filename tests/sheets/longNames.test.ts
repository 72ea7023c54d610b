/** Long names of jobs and marks: on paper nothing is cut off, and no sheet is printed smaller for them. */
import { expect, test } from "@jest/globals";
import { textWidth } from "../../src/core/base/textWidth";
import { finish } from "../../src/core/base/steps";
import type { Estimate } from "../../src/core/estimate/estimate";
import { drawPacking } from "../../src/sheets/crew/packingSheet";
import { loadingSheet } from "../../src/sheets/crew/loadingSheet";
import { findingsSheet } from "../../src/sheets/hardware/findingsSheet";
import { hardwareSheet } from "../../src/sheets/hardware/hardwareSheet";
import { drawReasons } from "../../src/sheets/hardware/reasonsSheet";
import { columnPoints } from "../../src/workbook/columnSize";
import { shownValue, type DrawnRow, type Drawing } from "../../src/workbook/drawing";
import { lookStyles } from "../../src/workbook/looks";
import { estimateRows, scheduleRow } from "../core/takeoff/notation";
import { lengths } from "./packedJobs";

const job =
  "Distribution centre for county schools and hospitals, phase 2, north building and annex";
const mark = "Door at the north west stair of mezzanine level 2, grid line C/7";

const estimate = (): Estimate =>
  estimateRows([
    scheduleRow("8' x 7' on 8'", { job, mark, quantity: 2, tailRun: "5'", transom: "yes" }),
    scheduleRow("6' x 9' on 8'", { job, mark: `${mark}, not counted` }),
  ]);

/** What our measure of words is above their true width, at the most. */
const rounding = 0.9;

/** The words of a row that reach past the cells that they have, or are higher than their row. */
function cutOff({ cells, height }: DrawnRow, widths: readonly number[]): readonly string[] {
  return cells.flatMap((cell, column) => {
    const words = cell === null ? null : shownValue(cell);
    if (cell === null || typeof words !== "string") return [];
    const { size, bold } = lookStyles[cell.look];
    const long = textWidth(words, size, bold) * rounding;
    const next = cells.findIndex(
      (other, at) => at > column && (other?.kind ?? "blank") !== "blank",
    );
    const spills = cell.span === undefined && cell.wrap !== true;
    const end =
      spills && next >= 0 ? next : column + (cell.span ?? (spills ? widths.length : 0)) + 1;
    const room = widths.slice(column, end).reduce((sum, width) => sum + columnPoints(width), 0);
    if (cell.wrap !== true) return long > room ? [words] : [];
    const lines = Math.ceil(long / room);
    return lines > 1 && lines * size * 1.15 > (height ?? 0) ? [words] : [];
  });
}

const sheets: readonly (readonly [string, (estimate: Estimate) => Drawing])[] = [
  ["packing list", ({ jobs, items }) => finish(drawPacking({ jobs, items, lengths }))],
  ["loading list", ({ jobs, items }) => loadingSheet({ jobs, items, lengths })],
  ["reasons", ({ jobs }) => finish(drawReasons(jobs, lengths))],
  ["findings", ({ findings }) => findingsSheet(findings)],
  [
    "hardware",
    ({ jobs }) =>
      hardwareSheet({
        jobs,
        lengths,
        withCosts: true,
        currencySign: "$",
        items: null,
        basis: "Starter",
      }),
  ],
];

test.each(sheets)("%s: all of a long job and a long mark is to be read", (_, draw) => {
  const { rows, columnWidths, print } = draw(estimate());
  const printed = columnWidths.slice(0, (print.columns?.last ?? columnWidths.length - 1) + 1);
  const cut = rows.flatMap(({ cells, ...row }) =>
    cutOff({ ...row, cells: cells.slice(0, printed.length) }, printed),
  );
  expect([...new Set(cut)]).toEqual([]);
});
