/**
 * Reads the order book of a workbook: the record, and what a person did to the sheets that show it.
 *
 * The record holds. Rows that a person added to the stock movements are taken in; rows of ours that
 * were changed or taken out are findings, and stand on record as they were. A number typed on the
 * person's own stock sheet since it was last read is a count of the shelf.
 */
import type { Block } from "../../core/base/cell";
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import { ok, type Result } from "../../core/base/result";
import { checkStock, type CheckedStock } from "../../core/purchasing/offers/purchasingRows";
import { sizedKey } from "../../core/purchasing/sizedItem";
import { addUp, piecesByKey, type SizedPieces } from "../../core/purchasing/sizedPieces";
import type { OrderRecord } from "../../core/purchasing/books/orderRecord";
import type { OrderBooks } from "../../core/purchasing/books/standing";
import {
  addMovements,
  auditMovements,
  countChange,
} from "../../core/purchasing/books/stockMovements";
import { sizeTexts, type SizeText } from "../../core/takeoff/sizeTexts";
import { movementsMark } from "../../sheets/orders/movementsSheet";
import { changeIn, orderBookMark } from "../../sheets/orders/orderBookSheet";
import type { CarriedCell, SheetMark } from "../../workbook/drawing";
import { sameMark } from "../../workbook/sheetStamp";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import { pieces } from "../../core/base/units";
import { readMovements, type ReadMovements } from "./handMovements";
import { readBookRecord, type BookRecord, type KeptRecord } from "./orderBookRecord";
import { readOrderTables } from "./orderTables";
import { lengthStyleOf, type Settings } from "../settings";

export const orderBookFindings = {
  "order-book-damaged": {
    level: "stop",
    says: "The record of the order book cannot be read, so nobody can say what is ordered.",
    todo: "Open a copy of the workbook in which it can; nothing is written over it here.",
  },
  "order-book-gone": {
    level: "stop",
    says: "The sheets of an order book stand here without its record, so nobody can say what is ordered.",
    todo: "Open a copy of the workbook that has it; or delete the sheets Order book, Stock movements and Stock now to begin anew.",
  },
  "order-sheets-behind": {
    level: "warn",
    says: "The sheets of the order book show change {found} and the record has change {change}: the writing was undone, or the sheet is an old one.",
    todo: "The record holds. Its sheets are written anew with the next change of the book.",
  },
} as const satisfies FindingTable;

export type OrderBook = {
  readonly kept: KeptRecord;
  /** With the rows by hand, the counts of the shelf and what is on order by other means. */
  readonly books: OrderBooks;
  /** What the person's stock sheet says now, as far as it was ever read. */
  readonly counts: readonly SizedPieces[];
  /** Cells of the sheet of movements that were taken in. */
  readonly carried: readonly CarriedCell[];
  readonly findings: readonly Finding[];
  /** False where something would be lost or wrong; a finding that stops says what. */
  readonly mayWrite: boolean;
};

type Readable = Pick<Workbook, "sheets" | "read" | "readSetting">;

/** With what the workbook's own stock sheet says. `today` is a date serial. Error: it could not be read. */
export async function readOrderBook(
  workbook: Workbook,
  settings: Settings,
  today: number,
): Promise<Result<OrderBook, WorkbookFault>> {
  const kept = await readKeptBook(workbook, settings, today);
  if (!kept.ok) return kept;
  const tables = await readOrderTables(workbook);
  if (!tables.ok) return tables;
  const { stock } = tables.value;
  const checked = stock === null ? null : checkStock(stock, settings.unit).value;
  return ok(withStock(kept.value, checked, today));
}

/** The orders alone; none where the record cannot be read. */
export async function readKeptOrders(
  workbook: Readable,
): Promise<Result<readonly OrderRecord[], WorkbookFault>> {
  const shown = await readOurs(workbook, orderBookMark);
  if (!shown.ok) return shown;
  const { record } = await readBookRecord(workbook, changeShown(shown.value));
  return ok(record.books.orders);
}

/** Without what the person's stock sheets say. */
export async function readKeptBook(
  workbook: Workbook,
  settings: Pick<Settings, "unit">,
  today: number,
): Promise<Result<OrderBook, WorkbookFault>> {
  const shown = await readOurs(workbook, orderBookMark);
  if (!shown.ok) return shown;
  const shownChange = changeShown(shown.value);
  const kept = await readBookRecord(workbook, shownChange);
  const sheet = await readOurs(workbook, movementsMark);
  if (!sheet.ok) return sheet;
  const { record } = kept;
  const isGone = kept.kind === "none" && (shown.value !== null || sheet.value !== null);
  const movements: ReadMovements =
    sheet.value === null || kept.kind !== "kept"
      ? { changed: record.books.movements, carried: [], findings: [] }
      : readMovements(sheet.value, record, sizeTextOf(record), { unit: settings.unit, today });
  const findings = [
    ...(kept.kind === "damaged" ? [makeFinding(orderBookFindings, "order-book-damaged", {})] : []),
    ...(isGone ? [makeFinding(orderBookFindings, "order-book-gone", {})] : []),
    ...behind(shownChange, kept),
    ...movements.findings,
    ...auditMovements(movements.changed),
  ];
  return ok({
    kept,
    books: { ...record.books, movements: movements.changed },
    counts: record.counts,
    carried: movements.carried,
    findings,
    mayWrite: findings.every(({ level }) => level !== "stop"),
  });
}

/**
 * The book with what a stock sheet says; as it is where there is none. A number on hand that is not
 * what it was when the book last took it in is what somebody counted; one that is the same has been
 * carried on by the movements.
 */
export function withStock(book: OrderBook, stock: CheckedStock | null, today: number): OrderBook {
  if (stock === null) return book;
  const { counted, onOrder } = stock;
  const before = piecesByKey(book.counts, sizedKey);
  const now = piecesByKey(counted, sizedKey);
  const once = new Map(counted.map((each) => [sizedKey(each), each]));
  let { movements } = book.books;
  for (const [key, { item, size }] of once) {
    const found = now.get(key) ?? 0;
    if (before.get(key) === found) continue;
    const by = { day: today, who: "", note: "as typed on the stock sheet" };
    const change = countChange(movements, { item, size }, pieces(found), by);
    movements = addMovements(movements, [change]);
  }
  const others = book.counts.filter((each) => !once.has(sizedKey(each)));
  const counts = [...once].map(([key, { item, size }]) => ({
    item,
    size,
    pieces: pieces(now.get(key) ?? 0),
  }));
  const books = { ...book.books, movements, elsewhere: addUp(onOrder) };
  return { ...book, books, counts: [...others, ...counts] };
}

/** How the sheets of the book write the size of each of its things. */
export function sizeTextOf({ books, style }: Pick<BookRecord, "books" | "style">): SizeText {
  const all = [
    ...books.movements,
    ...books.orders.flatMap(({ packs, offcuts, fromShelf, fromOrders }) => [
      ...packs,
      ...offcuts,
      ...fromShelf,
      ...fromOrders,
    ]),
  ];
  const once = new Map(all.map((each) => [sizedKey(each), each]));
  return sizeTexts([...once.values()], lengthStyleOf(style));
}

function behind(shown: number | null, { kind, record }: KeptRecord): readonly Finding[] {
  if (kind !== "kept" || shown === null || shown === record.change) return [];
  const details = { found: String(shown), values: { change: record.change } };
  return [makeFinding(orderBookFindings, "order-sheets-behind", details)];
}

/** The first sheet of ours with that mark, and `null` where there is none. */
export async function readOurs(
  workbook: Pick<Workbook, "sheets" | "read">,
  mark: SheetMark,
): Promise<Result<Block | null, WorkbookFault>> {
  for (const sheet of await workbook.sheets()) {
    if (sheet.mark !== null && sameMark(sheet.mark, mark)) {
      return workbook.read({ kind: "sheet", sheet: sheet.name });
    }
  }
  return ok(null);
}

function changeShown(block: Block | null): number | null {
  for (const cell of block?.rows.slice(0, 10).flat() ?? []) {
    const change = typeof cell === "string" ? changeIn(cell) : null;
    if (change !== null) return change;
  }
  return null;
}
