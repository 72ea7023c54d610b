/** The sheets that an order is made from: offers, stock on hand, job dates, suppliers, order rules. */
import type { CellValue } from "../../core/base/cell";
import { offerColumns, type OfferColumn } from "../../core/purchasing/offers/offers";
import { orderRuleRows } from "../../core/purchasing/orders/orderRules";
import type { Drawing } from "../../workbook/drawing";
import { typedTableSheet, type TypedColumn } from "../typedTableSheet";

export type TypedRows = readonly (readonly CellValue[])[];

const offerHeadings: Readonly<Record<OfferColumn, TypedColumn>> = {
  item: { words: "Item", width: 20, note: "The code that the items sheet uses." },
  size: {
    words: "Size",
    width: 14,
    note: "The stock length of a bar. Blank for what has no size, and for what is made to size at a price per unit of the items sheet.",
  },
  supplier: { words: "Supplier", width: 26 },
  packSize: { words: "Pieces in a pack", width: 12, format: "count" },
  price: { words: "Price per pack", width: 13, format: "money" },
  fromPacks: {
    words: "From packs",
    width: 10,
    format: "count",
    note: "The price holds for every pack from so many packs. One row for each price.",
  },
  leastPacks: { words: "Least packs", width: 10, format: "count" },
  leadDays: { words: "Lead days", width: 10, format: "count", note: "Working days." },
  priceDate: { words: "Price date", width: 12 },
};

/** Rows in the order of `offerColumns`. */
export const offersSheet = (rows: TypedRows, notice: string | null): Drawing =>
  typedTableSheet({
    name: "Offers",
    columns: offerColumns.map((key) => offerHeadings[key]),
    rows,
    notice,
  });

export const stockSheet = (rows: TypedRows, notice: string | null): Drawing =>
  typedTableSheet({
    name: "Stock on hand",
    columns: [
      { words: "Item", width: 20 },
      { words: "Size", width: 14, note: "The length of a bar or offcut." },
      {
        words: "On hand",
        width: 10,
        format: "count",
        note: "Free pieces on the shelf. Typed anew, it is a count of the shelf: stock movements carry on from it.",
      },
      {
        words: "On order",
        width: 10,
        format: "count",
        note: "Ordered for stock by other means than the order book, and not yet there.",
      },
    ],
    rows,
    notice,
  });

export const jobDatesSheet = (rows: TypedRows, notice: string | null): Drawing =>
  typedTableSheet({
    name: "Job dates",
    columns: [
      { words: "Job", width: 32, note: "As the schedule calls it." },
      { words: "Need by", width: 12, note: "When its hardware must be there, as a date." },
      { words: "Ship to", width: 48, note: "Where it goes." },
    ],
    rows,
    notice,
  });

export const suppliersSheet = (rows: TypedRows, notice: string | null): Drawing =>
  typedTableSheet({
    name: "Suppliers",
    columns: [
      { words: "Supplier", width: 26 },
      {
        words: "Least order",
        width: 12,
        format: "money",
        note: "An order for less is charged as this much.",
      },
      { words: "Freight", width: 12, format: "money", note: "For each order, whatever is in it." },
    ],
    rows,
    notice,
  });

/** With the starting value of every rule. */
export const orderRulesSheet = (holidays: readonly CellValue[], notice: string | null): Drawing => {
  const rules = orderRuleRows.filter(({ key }) => key !== "holiday");
  const holiday = orderRuleRows.find(({ key }) => key === "holiday");
  return typedTableSheet({
    name: "Order rules",
    columns: [
      { words: "Order rule", width: 24, list: orderRuleRows.map(({ label }) => label) },
      { words: "Value", width: 14 },
      { words: "What it means", width: 72 },
    ],
    rows: [
      ...rules.map(({ label, starter, says }) => [label, starter, says]),
      ...holidays.map((day) => [holiday?.label ?? "", day, holiday?.says ?? ""]),
    ],
    notice,
  });
};
