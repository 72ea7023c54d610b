/**
 * The sheets of the order book: its orders, what is to come, every movement of stock, what is
 * there now.
 */
import type { OrderBooks } from "../../core/purchasing/books/standing";
import type { SizeText } from "../../core/takeoff/sizeTexts";
import type { CarriedCell, Drawing, SheetMark } from "../../workbook/drawing";
import { wordsRow } from "../cells";
import { movementsSheet } from "./movementsSheet";
import { orderBookSheet } from "./orderBookSheet";
import { printSetup } from "../printSetup";
import { stockNowSheet } from "./stockNowSheet";
import { toComeSheet } from "./toComeSheet";

export type OrderBookWish = {
  readonly books: OrderBooks;
  /** Which change of the book the sheets show. */
  readonly change: number;
  readonly sizeText: SizeText;
  /** Cells of the sheet of movements that a person typed and that are on record now. */
  readonly carried: readonly CarriedCell[];
};

export const orderBookDrawings = ({
  books,
  change,
  sizeText,
  carried,
}: OrderBookWish): readonly Drawing[] => [
  orderBookSheet(books, change),
  toComeSheet(books),
  movementsSheet(books.movements, sizeText, carried),
  stockNowSheet(books, sizeText),
];

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
