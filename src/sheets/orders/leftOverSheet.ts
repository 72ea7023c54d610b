/** What an order leaves over: stock on hand once all of it is received. */
import type { Drawing } from "../../workbook/drawing";
import { headingRow, number, row, text, wordsRow } from "../cells";
import { orderMark, orderSheetName, sizeCell, type OrderSheetWish } from "./orderWish";
import { printSetup } from "../printSetup";

const headings = [
  { words: "Item", width: 22 },
  { words: "Description", width: 56 },
  { words: "Size", width: 16, numbers: true },
  { words: "Pieces", width: 10, numbers: true },
] as const;

export function leftOverSheet(wish: OrderSheetWish): Drawing {
  const { plan, describe, number: orderNumber } = wish;
  const heading = 2;
  return {
    name: orderSheetName(orderNumber, "left over"),
    mark: orderMark("left over", orderNumber),
    columnWidths: headings.map((column) => column.width),
    rows: [
      wordsRow("Left over", "title", headings.length, { height: 26 }),
      wordsRow(
        "Beyond the need in packs, and offcuts worth keeping. It is on hand once it has come.",
        "subtitle",
        headings.length,
      ),
      headingRow(headings),
      ...plan.leftOver.map((left) =>
        row(
          text(left.item),
          text(describe(left.item)),
          sizeCell(left, wish),
          number(left.pieces, "count"),
        ),
      ),
    ],
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      headingRow: heading,
      subject: orderNumber ?? "",
      title: "Left over",
      caution: "",
    }),
  };
}
