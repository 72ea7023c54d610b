/** `npm run order -- list`: the kept orders, what is to come of them, and what is there now. */
import { dateText } from "../../core/base/date";
import { findingCell } from "../../core/base/finding";
import { err, ok, type Result } from "../../core/base/result";
import { currencyOf, usDollar } from "../../core/money/currency";
import { decimalText, moneyText } from "../../core/money/writeMoney";
import type { OrderRecord } from "../../core/purchasing/books/orderRecord";
import { lineStands, standingWord } from "../../core/purchasing/books/receipts";
import { standingOf } from "../../core/purchasing/books/standing";
import { readOrderBook, sizeTextOf, type OrderBook } from "../../app/orders/orderBook";
import { lineName, piecesWords } from "../../app/orders/orderLineNames";
import { changedSheets } from "../../app/orders/sentSheets";
import { readSettings } from "../../app/settings";
import type { FileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import type { Answer } from "./answer";
import type { BookArguments } from "./orderArguments";
import { findingsText } from "./takeOffText";
import { textTable } from "./textTable";

export async function listBook(
  workbook: FileWorkbook,
  { today, json }: BookArguments,
): Promise<Result<Answer, string>> {
  const book = await readOrderBook(workbook, await readSettings(workbook), today);
  if (!book.ok) return err(book.error.message);
  const findings = [...book.value.findings];
  for (const order of book.value.books.orders) {
    const changed = await changedSheets(workbook, order);
    if (!changed.ok) return err(changed.error.message);
    findings.push(...changed.value);
  }
  const shown = { ...book.value, findings };
  return ok({
    text: json ? JSON.stringify(bookJson(shown), null, 2) : bookText(shown),
    complete: shown.mayWrite,
  });
}

const dayText = (serial: number | null): string => (serial === null ? "" : dateText(serial));
const jobsOf = ({ jobs }: OrderRecord): readonly string[] => jobs.map(({ job }) => job);
const suppliersOf = ({ charges }: OrderRecord): readonly string[] =>
  charges.map(({ supplier }) => supplier);

/** Money is decimal strings, days are `2026-12-01`, sizes as the sheets of the book have them. */
function bookJson(book: OrderBook) {
  const size = sizeTextOf({ books: book.books, style: book.kept.record.style });
  const { onHand, onOrder } = standingOf(book.books);
  const stock = (all: typeof onHand) =>
    all.map((each) => ({ item: each.item, size: size(each) || null, pieces: each.pieces }));
  return {
    orders: book.books.orders.map((order) => ({
      number: order.number,
      state: standingWord(order),
      made: dateText(order.made),
      sent: order.sent === null ? null : dateText(order.sent),
      received: order.received === null ? null : dateText(order.received),
      jobs: jobsOf(order),
      suppliers: suppliersOf(order),
      total: decimalText(order.total, currencyOf(order.currency) ?? usDollar),
      currency: order.currency,
      lines: lineStands(order).map(({ ordered, came, open, short, extra }, line) => ({
        line: line + 1,
        item: order.packs[line]?.item ?? "",
        size: order.packs[line]?.size.length === 0 ? null : (order.packs[line]?.words.size ?? null),
        supplier: order.packs[line]?.supplier ?? "",
        packSize: order.packs[line]?.packSize ?? 0,
        ordered,
        came,
        toCome: open,
        willNotCome: short,
        beyond: extra,
      })),
    })),
    freeOnHand: stock(onHand),
    freeOnOrder: stock(onOrder),
    movements: book.books.movements.length,
    findings: book.findings.map((finding) => ({
      code: finding.code,
      level: finding.level,
      cell: findingCell(finding),
      found: finding.found,
      message: finding.message,
    })),
  };
}

function bookText(book: OrderBook): string {
  const size = sizeTextOf({ books: book.books, style: book.kept.record.style });
  const { onHand, onOrder } = standingOf(book.books);
  const stock = [
    ...onHand.map((each) => [each.item, size(each), String(each.pieces), "on hand"]),
    ...onOrder.map((each) => [each.item, size(each), String(each.pieces), "on order"]),
  ];
  const { orders } = book.books;
  return [
    ...(orders.length === 0
      ? ["No order is kept."]
      : textTable(
          [
            { heading: "Order", align: "left" },
            { heading: "State", align: "left" },
            { heading: "Made", align: "left" },
            { heading: "Sent", align: "left" },
            { heading: "Received", align: "left" },
            { heading: "Total", align: "right" },
            { heading: "Jobs", align: "left" },
          ],
          orders.map((order) => [
            order.number,
            standingWord(order),
            dayText(order.made),
            dayText(order.sent),
            dayText(order.received),
            moneyText(order.total, currencyOf(order.currency) ?? usDollar),
            jobsOf(order).join("; "),
          ]),
        )),
    ...toCome(orders),
    "",
    ...(stock.length === 0
      ? ["Nothing is free on the shelf or on order."]
      : textTable(
          [
            { heading: "Item", align: "left" },
            { heading: "Size", align: "right" },
            { heading: "Free", align: "right" },
            { heading: "Where", align: "left" },
          ],
          stock,
        )),
    ...(book.findings.length === 0 ? [] : ["", ...findingsText(book.findings)]),
  ].join("\n");
}

/** The open lines of sent orders, by the number that `receive` takes. */
function toCome(orders: readonly OrderRecord[]): readonly string[] {
  const rows = orders
    .filter(({ state }) => state === "sent")
    .flatMap((order) =>
      order.packs.flatMap((packs, at) => {
        const open = lineStands(order)[at]?.open ?? 0;
        return open === 0
          ? []
          : [[order.number, String(at + 1), lineName(packs), piecesWords(open, packs)]];
      }),
    );
  return rows.length === 0
    ? []
    : [
        "",
        ...textTable(
          [
            { heading: "Order", align: "left" },
            { heading: "Line", align: "right" },
            { heading: "To come", align: "left" },
            { heading: "How many", align: "right" },
          ],
          rows,
        ),
      ];
}
