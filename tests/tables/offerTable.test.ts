import { describe, expect, test } from "@jest/globals";
import type { Block, CellValue } from "../../src/core/base/cell";
import { readItemTable } from "../../src/tables/itemTable";
import { readOfferTable } from "../../src/tables/offerTable";
import { readStockTable } from "../../src/tables/purchasingTables";

const blockOf = (rows: readonly (readonly CellValue[])[]): Block => ({
  sheet: "Offers",
  row: 0,
  column: 0,
  rows,
});

describe("an offers table", () => {
  const block = blockOf([
    ["Demo: suppliers and prices on this sheet are invented, every one of them.", null, null],
    ["Code", "Vendor", "Pack price", "Box of"],
    ["HN 1/4", "Elmwood", 4, 100],
    [null, null, null, null],
    ["TRACK", "Fernhill", 112, null],
  ]);

  test("is read by its headings, in other words too, blank rows passed over", () => {
    const rows = readOfferTable(block);
    expect(rows?.map(({ item, packSize }) => [item.value, packSize?.value])).toEqual([
      ["HN 1/4", 100],
      ["TRACK", null],
    ]);
    expect(rows?.[1]?.item.place).toEqual({ sheet: "Offers", row: 4, column: 0 });
  });

  test("is no items table, though it has codes and prices", () => {
    const likeItems = blockOf([
      ["Code", "Supplier", "Price", "Price date"],
      ["HN 1/4", "Elmwood", 4, "2026-10-01"],
    ]);
    expect(readOfferTable(likeItems)).toHaveLength(1);
    expect(readItemTable(likeItems)).toBeNull();
  });

  test("is not what has no supplier", () => {
    expect(
      readOfferTable(
        blockOf([
          ["Code", "Description", "Price"],
          ["A", "B", 1],
        ]),
      ),
    ).toBeNull();
  });
});

test("a stock table is told from the others by its count on hand", () => {
  const rows = [
    ["Item", "Size", "On hand"],
    ["TRACK", "9'-6\"", 1],
  ];
  expect(readStockTable(blockOf(rows))?.[0]?.onHand?.value).toBe(1);
  expect(readOfferTable(blockOf(rows))).toBeNull();
});
