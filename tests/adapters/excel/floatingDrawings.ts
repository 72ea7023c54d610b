/** Drawings with a picture or a chart, and a painter that needs no page. */
import type { Picture } from "../../../src/core/base/picture";
import type { PaintPicture } from "../../../src/adapters/excel/paintPicture";
import type { Drawing, DrawnChart, DrawnPicture } from "../../../src/workbook/drawing";
import { findSheet, type FakeSheet } from "../../fakehost/book";
import { drawing } from "../../workbook/drawings";
import type { ExcelRig } from "./excelRig";

export const packingMark = { kind: "packing", subject: "Job A" };
export const marginsMark = { kind: "margins", subject: "" };

export const picture: DrawnPicture = {
  row: 1,
  column: 0,
  width: 100,
  height: 50,
  marks: [],
  title: "Elevation of A-1",
  description: "Sliding door A-1, closed. Parts: 2 panels.",
};

/** A heading, a row of 60 points for a picture, one line, and the same again for each picture more. */
export const packing = (
  heading: string,
  pictures: readonly DrawnPicture[] = [picture],
): Drawing => {
  const made = drawing(
    "Packing",
    packingMark,
    [[heading], [null], ["HN 1/4"], [null], ["CB 1/4"]],
    {
      columnWidths: [10, 20],
      pictures,
    },
  );
  return {
    ...made,
    rows: made.rows.map((row, index) => (index % 2 === 1 ? { ...row, height: 60 } : row)),
  };
};

const chart: DrawnChart = {
  row: 6,
  column: 1,
  width: 400,
  height: 200,
  title: "Margin and target",
  firstRow: 1,
  lastRow: 2,
  nameColumn: 0,
  valueColumns: [1, 2],
  headingRow: 0,
  format: "percent",
};

/** A row for each job, with its margin and its target. */
export const margins = (jobs: Readonly<Record<string, number>>): Drawing =>
  drawing(
    "Margins",
    marginsMark,
    [["Job", "Margin", "Target"], ...Object.entries(jobs).map(([job, is]) => [job, is, 0.2])],
    {
      columnWidths: [20, 10, 10],
      charts: [{ ...chart, lastRow: Object.keys(jobs).length }],
    },
  );

/** An image that differs with the picture's size; counts what it paints. */
export function painter(): { readonly paint: PaintPicture; readonly painted: Picture[] } {
  const painted: Picture[] = [];
  return {
    painted,
    paint: (one) => {
      painted.push(one);
      return Promise.resolve(`iVBO${one.width}x${one.height}`);
    },
  };
}

export async function writtenIn(rig: ExcelRig, ...drawings: readonly Drawing[]) {
  const outcome = await rig.workbook.write(drawings);
  if (!outcome.ok) throw new Error(outcome.error.message);
  return outcome.value;
}

export function sheetNamed(rig: ExcelRig, name: string): FakeSheet {
  const sheet = findSheet(rig.book, name);
  if (sheet === undefined) throw new Error(`No sheet ${name}`);
  return sheet;
}
