/** Rows that come and go: cells below move, and every reference to them follows. */
import { allColumns, cellKey, keyColumn, keyRow, type Area } from "./areas";
import { changeFormulas, type FakeCell, type FakeSheet } from "./book";
import { withRowsMoved } from "./formulaText";
import { denied, refuse } from "./hostObject";
import { tell, type World } from "./world";

/** Inserts `count` rows before row `at`, or deletes `-count` from it, in the columns of `span`. */
export function shiftRows(
  world: World,
  sheet: FakeSheet,
  at: number,
  count: number,
  span: Pick<Area, "column" | "columns">,
): void {
  if (sheet.isProtected) denied();
  const { book } = world;
  const inSpan = (column: number): boolean =>
    column >= span.column && column < span.column + span.columns;
  const gone = -Math.min(count, 0);
  for (const table of book.tables.filter((each) => each.sheet === sheet)) {
    const { area } = table;
    const whole =
      area.column >= span.column && area.column + area.columns <= span.column + span.columns;
    if (!whole) {
      const below = area.row + area.rows > at && inSpan(area.column);
      if (below) refuse("InvalidOperation", "The operation would shift part of a table.");
      continue;
    }
    const last = area.row + area.rows - 1;
    const row = area.row >= at ? Math.max(area.row + count, at) : area.row;
    const end = last >= at + gone ? last + count : last >= at && gone > 0 ? at - 1 : last;
    table.area = { ...area, row, rows: Math.max(end - row + 1, 1) };
  }
  const cells: [number, FakeCell][] = [];
  for (const [key, cell] of sheet.cells) {
    const [row, column] = [keyRow(key), keyColumn(key)];
    if (!inSpan(column) || row < at) cells.push([key, cell]);
    else if (row >= at + gone) cells.push([cellKey(row + count, column), cell]);
  }
  sheet.cells.clear();
  for (const [key, cell] of cells) sheet.cells.set(key, cell);
  changeFormulas(book, (formula, own) =>
    withRowsMoved(formula, own?.name ?? "", sheet.name, at, count, span),
  );
  tell(world, "changed", sheet, { row: at, column: 0, rows: Math.abs(count), columns: allColumns });
}
