/** What one supplier is to send: our item, their pack, count, price and total, with live formulas. */
import { cents } from "../core/base/units";
import { majorUnits } from "../core/money/writeMoney";
import type { OrderedCharge } from "../core/purchasing/orderRecord";
import type { Drawing, DrawnRow } from "../workbook/drawing";
import { bandRow, blankRow, formula, headingRow, number, row, text, wordsRow } from "./cells";
import { dateCell, moneyCell, notComplete, supplierMark, type RecordedOrder } from "./orderWish";
import { printSetup } from "./printSetup";
import { at, down, rounded } from "./reference";

const headings = [
  { words: "Our item", width: 20 },
  { words: "Description", width: 46 },
  { words: "Size", width: 16, numbers: true },
  { words: "Their pack", width: 10, numbers: true, note: "Pieces in a pack." },
  { words: "Packs", width: 9, numbers: true },
  { words: "Price per pack", width: 13, numbers: true },
  { words: "Total", width: 14, numbers: true },
  { words: "Need by", width: 12 },
  { words: "Order by", width: 12 },
  { words: "Ship to", width: 40 },
] as const;

const [packsColumn, priceColumn, totalColumn] = [4, 5, 6];

/**
 * Drawn from the record alone, so that what is sent is what is on record. Packs and prices can be
 * typed over only while the order is not kept.
 */
export function supplierOrderSheet(
  { supplier, madeUp, freight }: OrderedCharge,
  { contents, currency, number: orderNumber, stateWords }: RecordedOrder,
): Drawing {
  const width = headings.length;
  const title = orderNumber === null ? `Order: ${supplier}` : `Order ${orderNumber}: ${supplier}`;
  const above: DrawnRow[] = [
    wordsRow(title, "title", width, { height: 26 }),
    wordsRow(
      `For ${contents.jobs.map(({ job }) => job).join("; ")}. Amounts in ${currency.sign}. ${stateWords}.`,
      "subtitle",
      width,
    ),
    ...(contents.complete ? [] : [wordsRow(notComplete, "stop", width)]),
    blankRow,
    headingRow(headings),
  ];
  const heading = above.length - 1;
  const bought = contents.packs.filter((packs) => packs.supplier === supplier);
  const first = heading + 1;
  const last = heading + bought.length;
  const shipTo = (jobs: readonly string[]): string =>
    [
      ...new Set(
        contents.jobs.flatMap(({ job, shipTo: place }) =>
          jobs.includes(job) && place !== "" ? [place] : [],
        ),
      ),
    ].join("; ");
  const look = orderNumber === null ? "input" : "body";
  const lines = bought.map((packs, index) => {
    const place = first + index;
    return row(
      text(packs.item),
      text(packs.words.description),
      text(packs.words.size, { align: "right" }),
      number(packs.packSize, "count"),
      number(packs.count, "count", { look }),
      moneyCell(packs.price, currency, { look }),
      formula(
        rounded(`${at(place, packsColumn)}*${at(place, priceColumn)}`, currency.digits),
        majorUnits(packs.cost, currency),
        "money",
      ),
      dateCell(packs.needBy),
      dateCell(packs.orderBy),
      text(shipTo(packs.jobs)),
    );
  });
  const goods = bought.reduce((sum, { cost }) => sum + cost, 0);
  return {
    name: orderNumber === null ? `Order ${supplier}` : `${orderNumber} ${supplier}`,
    mark: supplierMark(supplier, orderNumber),
    columnWidths: headings.map((column) => column.width),
    rows: [
      ...above,
      ...lines,
      bandRow("total", width, {
        0: text("Goods"),
        [totalColumn]: formula(
          `SUM(${down(totalColumn, first, last)})`,
          majorUnits(cents(goods), currency),
          "money",
        ),
      }),
      bandRow("body", width, {
        0: text("Made up to the least order"),
        [totalColumn]: moneyCell(madeUp, currency),
      }),
      bandRow("body", width, {
        0: text("Freight"),
        [totalColumn]: moneyCell(freight, currency),
      }),
      bandRow("total", width, {
        0: text("Total"),
        [totalColumn]: formula(
          `SUM(${down(totalColumn, last + 1, last + 3)})`,
          majorUnits(cents(goods + madeUp + freight), currency),
          "money",
        ),
      }),
    ],
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: supplier,
      title: orderNumber === null ? "Order" : `Order ${orderNumber}`,
      caution: "",
    }),
  };
}
