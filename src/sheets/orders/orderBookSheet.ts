/** The orders of the book, each with its state and days. */
import { currencyOf, usDollar } from "../../core/money/currency";
import { majorUnits } from "../../core/money/writeMoney";
import { earliest } from "../../core/purchasing/orders/orderNeeds";
import type { OrderRecord } from "../../core/purchasing/books/orderRecord";
import { standingWord } from "../../core/purchasing/books/receipts";
import type { OrderBooks } from "../../core/purchasing/books/standing";
import type { Drawing, DrawnRow, SheetMark } from "../../workbook/drawing";
import { headingRow, number, row, text, wordsRow } from "../cells";
import { fittedRow } from "../fittedRow";
import { dateCell } from "./orderWish";
import { printSetup } from "../printSetup";

export const orderBookMark: SheetMark = { kind: "order book", subject: "" };

const changeWords = (change: number): string => `Change ${change} of the order book.`;

/** The change that a cell of the order book's sheet says it shows; `null` for other words. */
export function changeIn(words: string): number | null {
  const [, digits] = /^Change (\d{1,15}) of the order book\./.exec(words) ?? [];
  return digits === undefined ? null : Number(digits);
}

const orderHeadings = [
  { words: "Order", width: 18 },
  { words: "State", width: 16 },
  { words: "Made", width: 12, middle: true },
  { words: "Sent", width: 12, middle: true },
  { words: "Received", width: 12, middle: true },
  { words: "Jobs", width: 48 },
  { words: "Suppliers", width: 40 },
  { words: "Need by", width: 12, middle: true },
  { words: "Total", width: 14, numbers: true },
  { words: "Currency", width: 10, middle: true },
] as const;

const widths = orderHeadings.map((column) => column.width);

/** `change` is which change of the book the sheet shows. */
export function orderBookSheet(books: OrderBooks, change: number): Drawing {
  const heading = 3;
  return {
    name: "Order book",
    mark: orderBookMark,
    columnWidths: widths,
    rows: [
      wordsRow("Order book", "title", orderHeadings.length, { height: 26 }),
      wordsRow(
        "A draft may change. What is sent stays as it is; what is needed later is another order.",
        "subtitle",
        orderHeadings.length,
      ),
      wordsRow(changeWords(change), "muted", orderHeadings.length),
      headingRow(orderHeadings),
      ...books.orders.map(orderRow),
      ...books.removed.map((removed) =>
        row(text(removed, { look: "muted" }), text("removed", { look: "muted" })),
      ),
    ],
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: "",
      title: "Order book",
      caution: "",
    }),
  };
}

function orderRow(order: OrderRecord): DrawnRow {
  const needBy = earliest(order.packs.map((packs) => packs.needBy));
  const cells = row(
    text(order.number),
    text(standingWord(order)),
    dateCell(order.made),
    dateCell(order.sent),
    dateCell(order.received),
    text(order.jobs.map(({ job }) => job).join("; ")),
    text(order.charges.map(({ supplier }) => supplier).join("; ")),
    dateCell(needBy),
    number(majorUnits(order.total, currencyOf(order.currency) ?? usDollar), "money"),
    text(order.currency, { align: "center" }),
  );
  return fittedRow(cells, widths);
}
