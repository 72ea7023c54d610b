/**
 * Pictures and charts are kept beside a sheet's cells, so they have to follow these when a person
 * inserts or deletes rows and columns above, beside or among them.
 */
import type { ICommandService, IRange } from "@univerjs/core";
import {
  InsertColMutation,
  InsertRowMutation,
  RemoveColMutation,
  RemoveRowMutation,
} from "@univerjs/sheets";
import type { DrawnChart, DrawnPicture } from "../../workbook/drawing";

/** Rows or columns that came (above zero) or went, `at` the first of them. */
export type Shift = {
  readonly along: "row" | "column";
  readonly at: number;
  readonly count: number;
};

/** What a change of the grid shifted, and on which sheet; `null` for other changes. */
export function shiftOf({
  id,
  params,
}: Parameters<Parameters<ICommandService["onCommandExecuted"]>[0]>[0]):
  (Shift & { readonly subUnitId: string }) | null {
  const kind = kinds.get(id);
  if (kind === undefined) return null;
  const { subUnitId, range } = params as { readonly subUnitId: string; readonly range: IRange };
  const [first, last] =
    kind.along === "row" ? [range.startRow, range.endRow] : [range.startColumn, range.endColumn];
  return { subUnitId, along: kind.along, at: first, count: kind.sign * (last - first + 1) };
}

const kinds: ReadonlyMap<string, { readonly along: Shift["along"]; readonly sign: 1 | -1 }> =
  new Map([
    [InsertRowMutation.id, { along: "row", sign: 1 }],
    [RemoveRowMutation.id, { along: "row", sign: -1 }],
    [InsertColMutation.id, { along: "column", sign: 1 }],
    [RemoveColMutation.id, { along: "column", sign: -1 }],
  ]);

/** Where an index is after the shift; one that went is where the next one is. */
function shifted({ at, count }: Shift, index: number): number {
  if (index < at) return index;
  return count > 0 ? index + count : Math.max(at, index + count);
}

/** Where the last one of a run is: of a run whose end went, what is left of it. */
function shiftedLast({ at, count }: Shift, index: number): number {
  if (index < at) return index;
  return count > 0 || index >= at - count ? index + count : at - 1;
}

export const shiftedPicture = (shift: Shift, picture: DrawnPicture): DrawnPicture =>
  shift.along === "row"
    ? { ...picture, row: shifted(shift, picture.row) }
    : { ...picture, column: shifted(shift, picture.column) };

/** `null` where all its rows, its names or its numbers went. */
export function shiftedChart(shift: Shift, chart: DrawnChart): DrawnChart | null {
  if (shift.along === "row") {
    const firstRow = shifted(shift, chart.firstRow);
    const lastRow = shiftedLast(shift, chart.lastRow);
    if (lastRow < firstRow) return null;
    const headingRow = shifted(shift, chart.headingRow);
    return { ...chart, row: shifted(shift, chart.row), firstRow, lastRow, headingRow };
  }
  const isGone = (column: number): boolean =>
    shift.count < 0 && column >= shift.at && column < shift.at - shift.count;
  const valueColumns = chart.valueColumns.filter((column) => !isGone(column));
  if (isGone(chart.nameColumn) || valueColumns.length === 0) return null;
  return {
    ...chart,
    column: shifted(shift, chart.column),
    nameColumn: shifted(shift, chart.nameColumn),
    valueColumns: valueColumns.map((column) => shifted(shift, column)),
  };
}
