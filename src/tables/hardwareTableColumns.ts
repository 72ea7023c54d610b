/** The columns that are read of a hardware sheet, and the headings they are known by. */
import type { Block } from "../core/base/cell";
import type { RowName } from "../core/corrections/rowName";
import { findHeadingRow, matchHeadings, type ColumnRule } from "./headings";

export type HardwareTableColumn =
  | "item"
  | "size"
  | "counted"
  | "correction"
  | "reason"
  | "by"
  | "quantity"
  | "spares"
  | "toOrder"
  | "line";

const rule = (
  key: HardwareTableColumn,
  label: string,
  ...words: readonly string[]
): ColumnRule<HardwareTableColumn> => ({ key, label, words });

const rules: readonly ColumnRule<HardwareTableColumn>[] = [
  rule("item", "Item", "item"),
  rule("size", "Size", "size"),
  rule("counted", "Counted (pcs)", "counted pcs"),
  rule("correction", "Correction", "correction"),
  rule("reason", "Reason", "reason"),
  rule("by", "By", "by"),
  rule("quantity", "Quantity (pcs)", "quantity pcs"),
  rule("spares", "Spares (pcs)", "spares pcs"),
  rule("toOrder", "To order (pcs)", "to order pcs"),
  rule("line", "Line", "line"),
];

/** Columns that no other table of a workbook has together. */
const needed: readonly HardwareTableColumn[] = ["item", "correction", "line"];

export type HardwareHeadings = {
  /** Both counted from the block's first cell. */
  readonly row: number;
  readonly columns: ReadonlyMap<HardwareTableColumn, number>;
};

/** Where the headings of a hardware sheet stand; `null` where there are none. */
export function hardwareHeadings({ rows }: Block): HardwareHeadings | null {
  const near = findHeadingRow(rows, rules, needed.length);
  const row = near >= 0 ? near : findHeadingRow(rows, rules, needed.length, rows.length);
  const cells = rows[row];
  if (cells === undefined) return null;
  const { matches } = matchHeadings(cells, rules);
  const columns = new Map(matches.map(({ key, column }) => [key, column]));
  return needed.every((key) => columns.has(key)) ? { row, columns } : null;
}

/** The columns of a row that a person types into, by the row's name. */
export function carriedColumns(name: RowName | null): readonly HardwareTableColumn[] {
  switch (name?.kind) {
    case "line":
      return ["correction", "reason", "by", "spares"];
    case "move":
      return ["correction"];
    case "added":
      return ["item", "size", "quantity", "correction", "spares", "reason", "by"];
    case undefined:
      return ["item", "size", "counted", "quantity", "correction", "spares", "reason", "by"];
  }
}
