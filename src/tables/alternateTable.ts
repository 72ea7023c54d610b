/** A block of cells -> rows of alternates and options, and the headings they are written with. */
import type { Block } from "../core/base/cell";
import type { AlternateColumn, AlternateRow } from "../core/pricing/alternates/alternateRows";
import type { ColumnRule } from "./headings";
import { typedRows } from "./typedRows";

export const alternateColumns: readonly ColumnRule<AlternateColumn>[] = [
  { key: "name", label: "Alternate", words: ["alternate", "option", "alternate or option"] },
  { key: "kind", label: "Kind", words: ["kind"] },
  { key: "job", label: "Job", words: ["job", "job name", "project"] },
  { key: "adds", label: "Adds", words: ["adds"] },
  {
    key: "of",
    label: "Item or name",
    words: ["item or name", "item", "name", "column, item or name", "column"],
  },
  { key: "to", label: "To", words: ["to", "becomes", "change to"] },
  {
    key: "openings",
    label: "Openings",
    words: ["openings", "marks", "marks or types", "of openings"],
  },
  { key: "quantity", label: "Quantity", words: ["quantity", "qty", "how many"] },
  { key: "each", label: "Each", words: ["each", "cost each", "unit cost"] },
];

/** `null` where the block has not the headings of alternates. */
export const readAlternateTable = (block: Block): readonly AlternateRow[] | null =>
  typedRows(block, alternateColumns, ["name", "adds"]);
