/** What is on the shelf and on order now, by the order book and the movements. */
import { openPromises } from "../../core/purchasing/books/promises";
import { compareSized, sizedKey, type SizedItem } from "../../core/purchasing/sizedItem";
import { piecesByKey, type SizedPieces } from "../../core/purchasing/sizedPieces";
import { standingOf, type OrderBooks } from "../../core/purchasing/books/standing";
import { stockOnHand } from "../../core/purchasing/books/stockMovements";
import type { SizeText } from "../../core/takeoff/sizeTexts";
import type { Drawing } from "../../workbook/drawing";
import { headingRow, number, row, text, wordsRow } from "../cells";
import { fittedRow } from "../fittedRow";
import { printSetup } from "../printSetup";

const shelfHeadings = [
  { words: "Item", width: 22 },
  { words: "Size", width: 16, numbers: true },
  { words: "On hand", width: 10, numbers: true, note: "By the rows of the stock movements." },
  { words: "Promised", width: 10, numbers: true, note: "To sent orders, and not taken yet." },
  { words: "Free on hand", width: 10, numbers: true },
  {
    words: "Free on order",
    width: 10,
    numbers: true,
    note: "What sent orders bring for stock, and what is on order by other means.",
  },
] as const;

const widths = shelfHeadings.map((column) => column.width);

export function stockNowSheet(books: OrderBooks, sizeText: SizeText): Drawing {
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
    mark: { kind: "stock now", subject: "" },
    columnWidths: widths,
    rows: [
      wordsRow("Stock now", "title", width, { height: 26 }),
      wordsRow("By the order book and the stock movements.", "subtitle", width),
      fittedRow(headingRow(shelfHeadings), widths),
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
