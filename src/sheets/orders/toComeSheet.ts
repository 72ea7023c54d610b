/** What is still to come of sent orders, line by line, and where something came short or beyond. */
import { dateText } from "../../core/base/date";
import type { OrderRecord } from "../../core/purchasing/books/orderRecord";
import { lineStands, type LineStand } from "../../core/purchasing/books/receipts";
import { sentOrders, type OrderBooks } from "../../core/purchasing/books/standing";
import type { Drawing, DrawnRow } from "../../workbook/drawing";
import { headingRow, number, row, text, wordsRow } from "../cells";
import { fittedRow } from "../fittedRow";
import { dateCell } from "./orderWish";
import { printSetup } from "../printSetup";

const headings = [
  { words: "Order", width: 16 },
  { words: "Line", width: 7, middle: true, note: "By this number a receipt can name the line." },
  { words: "Supplier", width: 24 },
  { words: "Item", width: 20 },
  { words: "Size", width: 16, numbers: true },
  { words: "Pack", width: 8, numbers: true, note: "Pieces in a pack." },
  { words: "Ordered", width: 10, numbers: true, note: "Pieces, all packs together." },
  { words: "Came", width: 10, numbers: true },
  { words: "To come", width: 10, numbers: true },
  { words: "Will not come", width: 10, numbers: true, note: "Closed short; it is needed again." },
  { words: "Beyond", width: 10, numbers: true, note: "Came beyond what was to come; stock." },
  { words: "Need by", width: 12, middle: true },
  { words: "Receipts", width: 44 },
] as const;

const widths = headings.map((column) => column.width);

/** The lines of orders that are still to come, and those of received ones that came otherwise. */
export function toComeSheet(books: OrderBooks): Drawing {
  const width = headings.length;
  const heading = 2;
  const rows = sentOrders(books).flatMap(orderRows);
  return {
    name: "To come",
    mark: { kind: "orders to come", subject: "" },
    columnWidths: widths,
    rows: [
      wordsRow("To come", "title", width, { height: 26 }),
      wordsRow(
        "Lines of sent orders, and those of received ones of which more or less came than was ordered.",
        "subtitle",
        width,
      ),
      fittedRow(headingRow(headings), widths),
      ...(rows.length === 0 ? [wordsRow("Nothing is to come.", "muted", width)] : rows),
    ],
    frozenRows: heading + 1,
    frozenColumns: 2,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: "",
      title: "To come",
      caution: "",
    }),
  };
}

function orderRows(order: OrderRecord): readonly DrawnRow[] {
  return lineStands(order).flatMap((stand, line) =>
    order.state === "received" && stand.short + stand.extra === 0
      ? []
      : [lineRow(order, line, stand)],
  );
}

function lineRow(
  order: OrderRecord,
  line: number,
  { ordered, came, open, short, extra }: LineStand,
): DrawnRow {
  const packs = order.packs[line];
  const cells = row(
    text(order.number),
    number(line + 1, "count", { align: "center" }),
    text(packs?.supplier ?? ""),
    text(packs?.item ?? ""),
    text(packs?.words.size ?? "", { align: "right" }),
    number(packs?.packSize ?? 0, "count"),
    ...[ordered, came, open, short, extra].map((count) => number(count, "count")),
    dateCell(packs?.needBy ?? null),
    text(receiptWords(order, line)),
  );
  return fittedRow(cells, widths);
}

/** `2026-11-16: 40 (MJ); 2026-11-20: 5, the rest will not come: sold out (KB)`. */
const receiptWords = ({ receipts }: OrderRecord, line: number): string =>
  receipts
    .flatMap(({ day, who, reason, lines }) => {
      const own = lines.filter((each) => each.line === line);
      if (own.length === 0) return [];
      const came = own.reduce((sum, each) => sum + each.came, 0);
      const isClosed = own.some((each) => each.isClosed);
      const what = isClosed ? `${came}, the rest will not come: ${reason}` : String(came);
      return [`${dateText(day)}: ${what}${who === "" ? "" : ` (${who})`}`];
    })
    .join("; ");
