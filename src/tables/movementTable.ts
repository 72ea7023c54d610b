/** A block of cells -> the rows of a sheet of stock movements, and those of a supplier's order. */
import type { Block } from "../core/base/cell";
import { isBlank } from "../core/base/cell";
import type { ColumnRule } from "./headings";
import { typedRows, type TypedRow } from "./typedRows";

export const movementColumnKeys = [
  "number",
  "day",
  "item",
  "size",
  "kind",
  "change",
  "balance",
  "job",
  "order",
  "who",
  "note",
] as const;
export type MovementColumn = (typeof movementColumnKeys)[number];

const movementColumns: readonly ColumnRule<MovementColumn>[] = [
  { key: "number", label: "Row", words: ["row"] },
  { key: "day", label: "Day", words: ["day"] },
  { key: "item", label: "Item", words: ["item"] },
  { key: "size", label: "Size", words: ["size"] },
  { key: "kind", label: "What", words: ["what"] },
  { key: "change", label: "Change", words: ["change"] },
  { key: "balance", label: "On hand after", words: ["on hand after"] },
  { key: "job", label: "Job", words: ["job"] },
  { key: "order", label: "Order", words: ["order"] },
  { key: "who", label: "Who", words: ["who"] },
  { key: "note", label: "Note", words: ["note"] },
];

/** `null` where the headings are gone. */
export const readMovementRows = (block: Block): readonly TypedRow<MovementColumn>[] | null =>
  typedRows(block, movementColumns, movementColumnKeys);

export type OrderedColumn = "item" | "size" | "packSize" | "count" | "price" | "total";

const orderedColumns: readonly ColumnRule<OrderedColumn>[] = [
  { key: "item", label: "Our item", words: ["our item"] },
  { key: "size", label: "Size", words: ["size"] },
  { key: "packSize", label: "Their pack", words: ["their pack"] },
  { key: "count", label: "Packs", words: ["packs"] },
  { key: "price", label: "Price per pack", words: ["price per pack"] },
  { key: "total", label: "Total", words: ["total"] },
];

/** The rows of what a supplier is to send; `null` where the headings are gone. */
export const readOrderedRows = (block: Block): readonly TypedRow<OrderedColumn>[] | null =>
  typedRows(block, orderedColumns, ["item", "size", "packSize", "count", "price", "total"])?.filter(
    ({ packSize, count, price }) =>
      [packSize, count, price].some((cell) => cell !== undefined && !isBlank(cell.value)),
  ) ?? null;
