/** A block of cells -> rows of an offers table, and the headings it is written with. */
import type { Block } from "../core/base/cell";
import type { OfferColumn, OfferRow } from "../core/purchasing/offers/offers";
import type { ColumnRule } from "./headings";
import { typedRows } from "./typedRows";

export const offerTableColumns: readonly ColumnRule<OfferColumn>[] = [
  { key: "item", label: "Item", words: ["item", "item code", "code", "part", "part number"] },
  {
    key: "size",
    label: "Size",
    words: ["size", "stock length", "length", "bar length", "bar"],
  },
  { key: "supplier", label: "Supplier", words: ["supplier", "vendor", "sold by"] },
  {
    key: "packSize",
    label: "Pieces in a pack",
    words: ["pieces in a pack", "pack size", "pack", "pieces per pack", "pcs per pack", "box of"],
  },
  {
    key: "price",
    label: "Price per pack",
    words: ["price per pack", "pack price", "price", "price a pack", "cost per pack"],
  },
  {
    key: "fromPacks",
    label: "From packs",
    words: ["from packs", "price from packs", "from", "break", "price break"],
  },
  {
    key: "leastPacks",
    label: "Least packs",
    words: ["least packs", "least order", "minimum packs", "min packs", "minimum order"],
  },
  {
    key: "leadDays",
    label: "Lead days",
    words: ["lead days", "lead time", "lead time days", "lead", "delivery days"],
  },
  {
    key: "priceDate",
    label: "Price date",
    words: ["price date", "priced on", "date", "date of price"],
  },
];

/** The rows of an offers table; `null` where the block has no item, supplier and price of a pack. */
export const readOfferTable = (block: Block): readonly OfferRow[] | null =>
  typedRows(block, offerTableColumns, ["item", "supplier", "price"])?.map((row) => ({
    ...row,
    item: row.item ?? { value: null, place: null },
  })) ?? null;
