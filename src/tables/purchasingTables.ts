/** Blocks of cells -> rows of the other tables that an order is made from, and their headings. */
import type { Block } from "../core/base/cell";
import type {
  JobDateColumn,
  OrderRuleColumn,
  StockColumn,
  SupplierColumn,
} from "../core/purchasing/offers/purchasingRows";
import type { ColumnRule } from "./headings";
import { typedRows, type TypedRow } from "./typedRows";

export const stockColumns: readonly ColumnRule<StockColumn>[] = [
  { key: "item", label: "Item", words: ["item", "item code", "code", "part", "part number"] },
  { key: "size", label: "Size", words: ["size", "length", "bar length", "offcut"] },
  { key: "onHand", label: "On hand", words: ["on hand", "in stock", "stock", "on the shelf"] },
  { key: "onOrder", label: "On order", words: ["on order", "ordered", "on its way"] },
];

export const jobDateColumns: readonly ColumnRule<JobDateColumn>[] = [
  { key: "job", label: "Job", words: ["job", "job name", "project"] },
  { key: "needBy", label: "Need by", words: ["need by", "needed by", "need by date", "due"] },
  { key: "shipTo", label: "Ship to", words: ["ship to", "deliver to", "delivery address"] },
];

export const supplierColumns: readonly ColumnRule<SupplierColumn>[] = [
  { key: "supplier", label: "Supplier", words: ["supplier", "vendor"] },
  {
    key: "leastOrder",
    label: "Least order",
    words: ["least order", "minimum order", "min order", "order minimum"],
  },
  { key: "freight", label: "Freight", words: ["freight", "delivery", "freight per order"] },
];

export const orderRuleColumns: readonly ColumnRule<OrderRuleColumn>[] = [
  { key: "rule", label: "Order rule", words: ["order rule", "purchasing rule"] },
  { key: "value", label: "Value", words: ["value"] },
];

/** Each `null` where the block has not the headings of that table. */
export const readStockTable = (block: Block): readonly TypedRow<StockColumn>[] | null =>
  typedRows(block, stockColumns, ["item", "onHand"]);

export const readJobDates = (block: Block): readonly TypedRow<JobDateColumn>[] | null =>
  typedRows(block, jobDateColumns, ["job", "needBy"]);

export const readSupplierTable = (block: Block): readonly TypedRow<SupplierColumn>[] | null =>
  typedRows(block, supplierColumns, ["supplier", "leastOrder"]);

export const readOrderRules = (block: Block): readonly TypedRow<OrderRuleColumn>[] | null =>
  typedRows(block, orderRuleColumns, ["rule", "value"]);
