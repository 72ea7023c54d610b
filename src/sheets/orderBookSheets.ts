/** The sheets of the order book: its orders, every movement of stock, and what is there now. */
import { currencyOf, usDollar } from "../core/money/currency";
import { majorUnits } from "../core/money/writeMoney";
import type { OrderRecord } from "../core/purchasing/orderRecord";
import { openPromises } from "../core/purchasing/promises";
import { compareSized, sizedKey, type SizedItem } from "../core/purchasing/sizedItem";
import { piecesByKey, type SizedPieces } from "../core/purchasing/sizedPieces";
import { standingOf, type OrderBooks } from "../core/purchasing/standing";
import { movementKinds, stockOnHand, type StockMovement } from "../core/purchasing/stockMovements";
import type { SizeText } from "../core/takeoff/sizeTexts";
import type { CarriedCell, Drawing, DrawnRow, SheetMark } from "../workbook/drawing";
import { blank, date, headingRow, number, row, text, wordsRow } from "./cells";
import { dateCell } from "./orderWish";
import { printSetup } from "./printSetup";

export const orderBookMark: SheetMark = { kind: "order book", subject: "" };
export const movementsMark: SheetMark = { kind: "stock movements", subject: "" };
const shelfMark: SheetMark = { kind: "stock now", subject: "" };

export type OrderBookWish = {
  readonly books: OrderBooks;
  /** Which change of the book the sheets show. */
  readonly change: number;
  readonly sizeText: SizeText;
  /** Cells of the sheet of movements that a person typed and that are on record now. */
  readonly carried: readonly CarriedCell[];
};

export const orderBookDrawings = (wish: OrderBookWish): readonly Drawing[] => [
  orderBookSheet(wish),
  movementsSheet(wish),
  shelfSheet(wish),
];

/** `Draft of 2026-11-02`, and so on. */
export const stateWords: Readonly<Record<OrderRecord["state"], string>> = {
  draft: "draft",
  sent: "sent",
  received: "received",
};

const changeWords = (change: number): string => `Change ${change} of the order book.`;

/** The change that a cell of the order book's sheet says it shows; `null` for other words. */
export function changeIn(words: string): number | null {
  const [, digits] = /^Change (\d{1,15}) of the order book\./.exec(words) ?? [];
  return digits === undefined ? null : Number(digits);
}

const orderHeadings = [
  { words: "Order", width: 18 },
  { words: "State", width: 10 },
  { words: "Made", width: 12 },
  { words: "Sent", width: 12 },
  { words: "Received", width: 12 },
  { words: "Jobs", width: 48 },
  { words: "Suppliers", width: 40 },
  { words: "Need by", width: 12 },
  { words: "Total", width: 14, numbers: true },
  { words: "Currency", width: 10 },
] as const;

function orderBookSheet({ books, change }: OrderBookWish): Drawing {
  const heading = 3;
  return {
    name: "Order book",
    mark: orderBookMark,
    columnWidths: orderHeadings.map(({ width }) => width),
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
  const needBy = order.packs.reduce<number | null>(
    (first, packs) =>
      packs.needBy === null || (first !== null && first <= packs.needBy) ? first : packs.needBy,
    null,
  );
  return row(
    text(order.number),
    text(stateWords[order.state]),
    dateCell(order.made),
    dateCell(order.sent),
    dateCell(order.received),
    text(order.jobs.map(({ job }) => job).join("; "), { wrap: true }),
    text(order.charges.map(({ supplier }) => supplier).join("; "), { wrap: true }),
    dateCell(needBy),
    number(majorUnits(order.total, currencyOf(order.currency) ?? usDollar), "money"),
    text(order.currency),
  );
}

export const movementHeadings = [
  { words: "Row", width: 8, numbers: true },
  { words: "Day", width: 12 },
  { words: "Item", width: 22 },
  { words: "Size", width: 16, numbers: true },
  {
    words: "What",
    width: 12,
    note: `One of: ${movementKinds.join(", ")}. Blank is a count of the shelf.`,
  },
  {
    words: "Change",
    width: 10,
    numbers: true,
    note: "Pieces that came; with a minus in front those that went.",
  },
  {
    words: "On hand after",
    width: 10,
    numbers: true,
    note: "Typed alone, with no change, it is what a count of the shelf found.",
  },
  { words: "Job", width: 28 },
  { words: "Order", width: 16 },
  { words: "Who", width: 14 },
  { words: "Note", width: 40 },
] as const;

/** Empty rows to go on with. */
const rowsToGoOn = 20;

function movementsSheet({ books, sizeText, carried }: OrderBookWish): Drawing {
  const width = movementHeadings.length;
  const heading = 2;
  const first = heading + 1 + books.movements.length;
  return {
    name: "Stock movements",
    mark: movementsMark,
    columnWidths: movementHeadings.map((column) => column.width),
    rows: [
      wordsRow("Stock movements", "title", width, { height: 26 }),
      wordsRow(
        "Rows are only added. Mend a mistake with a new row below the others: a day, the item, what changed or what you counted, who and why.",
        "subtitle",
        width,
      ),
      headingRow(movementHeadings),
      ...books.movements.map((movement) => movementRow(movement, sizeText)),
      ...Array.from({ length: rowsToGoOn }, () =>
        row(...movementHeadings.map(() => blank({ look: "input", input: true }))),
      ),
    ],
    frozenRows: heading + 1,
    frozenColumns: 3,
    tables: [],
    choices: [
      {
        column: 4,
        firstRow: first,
        lastRow: first + rowsToGoOn - 1,
        list: movementKinds,
        othersToo: true,
      },
    ],
    carried,
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: "",
      title: "Stock movements",
      caution: "",
    }),
  };
}

const movementRow = (movement: StockMovement, sizeText: SizeText): DrawnRow =>
  row(
    number(movement.number, "count"),
    date({ kind: "date", serial: movement.day }),
    text(movement.item),
    text(sizeText(movement), { align: "right" }),
    text(movement.kind),
    number(movement.change, "count"),
    number(movement.balance, "count"),
    text(movement.job ?? ""),
    text(movement.order ?? ""),
    text(movement.who),
    text(movement.note),
  );

const shelfHeadings = [
  { words: "Item", width: 22 },
  { words: "Size", width: 16, numbers: true },
  { words: "On hand", width: 10, numbers: true, note: "By the rows of the stock movements." },
  { words: "Promised", width: 10, numbers: true, note: "To sent orders, and not taken yet." },
  { words: "Free on hand", width: 10, numbers: true },
  { words: "Free on order", width: 10, numbers: true, note: "What sent orders bring for stock." },
] as const;

function shelfSheet({ books, sizeText }: OrderBookWish): Drawing {
  const width = shelfHeadings.length;
  const heading = 2;
  const standing = standingOf(books);
  const columns: readonly (readonly SizedPieces[])[] = [
    stockOnHand(books.movements),
    openPromises(books.orders, books.movements),
    standing.onHand,
    standing.onOrder,
  ];
  const once = new Map<string, SizedItem>(columns.flat().map((each) => [sizedKey(each), each]));
  const counts = columns.map((column) => piecesByKey(column, sizedKey));
  return {
    name: "Stock now",
    mark: shelfMark,
    columnWidths: shelfHeadings.map((column) => column.width),
    rows: [
      wordsRow("Stock now", "title", width, { height: 26 }),
      wordsRow("By the order book and the stock movements.", "subtitle", width),
      headingRow(shelfHeadings),
      ...[...once.values()]
        .sort(compareSized)
        .map((each) =>
          row(
            text(each.item),
            text(sizeText(each), { align: "right" }),
            ...counts.map((column) => number(column.get(sizedKey(each)) ?? 0, "count")),
          ),
        ),
    ],
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({ headingRow: heading, subject: "", title: "Stock now", caution: "" }),
  };
}

/** A notice in the place of a sheet that an order has no more. */
export const goneSheet = (name: string, mark: SheetMark, words: string): Drawing => ({
  name,
  mark,
  columnWidths: [60],
  rows: [wordsRow(words, "subtitle", 1)],
  frozenRows: 0,
  frozenColumns: 0,
  tables: [],
  choices: [],
  print: printSetup({ headingRow: 0, subject: "", title: "", caution: "" }),
});
