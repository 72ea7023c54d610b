/** Copying cells as paste does: formulas move along, filtered rows stay behind, merges come too. */
import { allColumns, overlap, type Area } from "./areas";
import { blankCell, cellsIn, type FakeCell, type FakeSheet } from "./book";
import { pasted } from "./formulaText";
import { badArgument } from "./hostObject";

/** Puts `from` of `source` at the first cell of `to`. A larger `to` that is no multiple is cut. */
export function copyCells(
  source: FakeSheet,
  from: Area,
  target: FakeSheet,
  to: Area,
  kind: string,
): void {
  if (kind !== "All") badArgument("Not in the fake.");
  const rows = Array.from({ length: from.rows }, (_, down) => from.row + down).filter(
    (row) => !source.filteredRows.has(row),
  );
  const copies: [row: number, column: number, cell: FakeCell, notes: string | undefined][] = [];
  rows.forEach((row, down) => {
    for (let right = 0; right < from.columns; right++) {
      const key = row * allColumns + from.column + right;
      const cell = structuredClone(source.cells.get(key) ?? blankCell());
      if (cell.formula !== null) {
        cell.formula = pasted(
          cell.formula,
          to.row + down - row,
          to.column + right - (from.column + right),
        );
      }
      copies.push([to.row + down, to.column + right, cell, source.notes.get(key)]);
    }
  });
  const area = { row: to.row, column: to.column, rows: from.rows, columns: from.columns };
  const half = target.merges.find((merge) => overlap(merge, area) && !covers(area, merge));
  if (half !== undefined) badArgument("The operation is not allowed on part of a merged cell.");
  for (const [key] of [...cellsIn(target, area)]) target.cells.delete(key);
  for (const [row, column, cell, note] of copies) {
    const key = row * allColumns + column;
    if (!isBlank(cell)) target.cells.set(key, cell);
    target.comments.delete(key);
    if (note === undefined) target.notes.delete(key);
    else target.notes.set(key, note);
  }
  target.merges = [
    ...target.merges.filter((merge) => !overlap(merge, area)),
    ...source.merges
      .filter((merge) => covers(from, merge))
      .map((merge) => ({
        ...merge,
        row: merge.row + to.row - from.row,
        column: merge.column + to.column - from.column,
      })),
  ];
}

const covers = (outer: Area, inner: Area): boolean =>
  inner.row >= outer.row &&
  inner.column >= outer.column &&
  inner.row + inner.rows <= outer.row + outer.rows &&
  inner.column + inner.columns <= outer.column + outer.columns;

const isBlank = (cell: FakeCell): boolean =>
  cell.value === "" &&
  cell.formula === null &&
  cell.format === "General" &&
  cell.validation === null &&
  Object.keys(cell.style).length === 0;
