/** What one supplier is to send: our item, their pack, count, price and total, with live formulas. */
import { columnName } from "../../core/base/cell";
import { cents } from "../../core/base/units";
import { majorUnits } from "../../core/money/writeMoney";
import { groupBy } from "../../core/base/groupBy";
import type { OrderContents, OrderedCharge } from "../../core/purchasing/books/orderRecord";
import type { Drawing, DrawnRow } from "../../workbook/drawing";
import { bandRow, blankRow, formula, headingRow, number, row, text, wordsRow } from "../cells";
import { dateCell, moneyCell, notComplete, supplierMark, type RecordedOrder } from "./orderWish";
import { fittedRow, titleRow } from "../fittedRow";
import { printSetup } from "../printSetup";
import { at, down, rounded } from "../reference";

const headings = [
  { words: "Our item", width: 18 },
  { words: "Description", width: 58 },
  { words: "Size", width: 14, numbers: true },
  { words: "Their pack", width: 8, numbers: true, note: "Pieces in a pack." },
  { words: "Packs", width: 8, numbers: true },
  { words: "Price per pack", width: 12, numbers: true },
  { words: "Total", width: 13, numbers: true },
  { words: "Need by", width: 12, middle: true },
  { words: "Order by", width: 12, middle: true },
  { words: "Ship to", width: 10, middle: true, note: "The places are named above." },
] as const;

const widths = headings.map((column) => column.width);
const [packsColumn, priceColumn, totalColumn] = [4, 5, 6];

/**
 * Drawn from the record alone, so that what is sent is what is on record. Packs and prices can be
 * typed over only while the order is not kept.
 */
export function supplierOrderSheet(
  { supplier, madeUp, freight }: OrderedCharge,
  { contents, currency, number: orderNumber, stateWords, isSent }: RecordedOrder,
): Drawing {
  const width = headings.length;
  const title = orderNumber === null ? `Order: ${supplier}` : `Order ${orderNumber}: ${supplier}`;
  const places = placesOf(contents.jobs);
  const above: DrawnRow[] = [
    titleRow(title, widths),
    wordsRow(
      `For ${contents.jobs.map(({ job }) => job).join("; ")}. Amounts in ${currency.sign}. ${stateWords}.`,
      "subtitle",
      width,
    ),
    ...(contents.complete || isSent ? [] : [wordsRow(notComplete, "stop", width)]),
    ...places.map(({ letter, place, jobs }) =>
      wordsRow(`Ship to ${letter}: ${place} (${jobs.join("; ")})`, "body", width),
    ),
    blankRow,
    fittedRow(headingRow(headings), widths),
  ];
  const heading = above.length - 1;
  const bought = contents.packs.filter((packs) => packs.supplier === supplier);
  const first = heading + 1;
  const last = heading + bought.length;
  const look = orderNumber === null ? "input" : "body";
  const lines = bought.map((packs, index) => {
    const place = first + index;
    const cells = row(
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
      text(
        places
          .filter(({ jobs }) => jobs.some((job) => packs.jobs.includes(job)))
          .map(({ letter }) => letter)
          .join(", "),
        { align: "center" },
      ),
    );
    return fittedRow(cells, widths);
  });
  const goods = bought.reduce((sum, { cost }) => sum + cost, 0);
  return {
    name: orderNumber === null ? `Order ${supplier}` : `${orderNumber} ${supplier}`,
    mark: supplierMark(supplier, orderNumber),
    columnWidths: widths,
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

/** Where goods go, by letter, each place once; a job that names none has its goods sent to the firm. */
function placesOf(jobs: OrderContents["jobs"]): readonly {
  readonly letter: string;
  readonly place: string;
  readonly jobs: readonly string[];
}[] {
  const places = groupBy(
    jobs.filter(({ shipTo }) => shipTo !== ""),
    ({ shipTo }) => shipTo,
  );
  return [...places].map(([place, all], index) => ({
    letter: columnName(index),
    place,
    jobs: all.map(({ job }) => job),
  }));
}
