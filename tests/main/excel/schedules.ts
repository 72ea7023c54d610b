/** A small schedule for tests of the add-in: invented openings on a sheet. */
import type { RigCell, RigSheet } from "../../workbook/rig";

const headings = [
  "Job",
  "Mark",
  "Type",
  "Qty",
  "Width",
  "Height",
  "Post height",
  "Tail post",
  "Floor",
];

/** Cells from A1 on: the headings, then a row for each opening. */
export const scheduleSheet = (name: string, rows: readonly (readonly RigCell[])[]): RigSheet => ({
  name,
  cells: Object.fromEntries(
    [headings, ...rows].flatMap((row, down) =>
      row.map((cell, right) => [`${"ABCDEFGHI".charAt(right)}${down + 1}`, cell]),
    ),
  ),
});

export const goodRow = (job: string, mark: string): readonly RigCell[] => [
  job,
  mark,
  "sliding door",
  1,
  96,
  84,
  84,
  "yes",
  "concrete",
];
