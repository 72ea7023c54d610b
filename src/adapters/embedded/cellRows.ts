/** Cells as the grid keeps them: by row, then by column, with gaps. */
import type { ICellData, Nullable } from "@univerjs/core";

export type CellRows = Readonly<
  Record<number, Readonly<Record<number, Nullable<ICellData>>> | undefined>
>;

/** Each place that has a cell, in row order. */
export function* places(
  cells: Readonly<Record<number, Readonly<Record<number, unknown>> | undefined>>,
): Generator<readonly [row: number, column: number]> {
  for (const row of Object.keys(cells)) {
    for (const column of Object.keys(cells[Number(row)] ?? {})) yield [Number(row), Number(column)];
  }
}
