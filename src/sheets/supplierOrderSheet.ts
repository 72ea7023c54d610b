/** What one supplier is to send: our item, their pack, count, price and total, with live formulas. */
import { majorUnits } from "../core/money/writeMoney";
import type { OrderCharge } from "../core/purchasing/orderPlan";
import type { Drawing, DrawnRow } from "../workbook/drawing";
import { bandRow, blankRow, formula, headingRow, number, row, text, wordsRow } from "./cells";
import {
  dateCell,
  jobsOf,
  moneyCell,
  notComplete,
  sizeCell,
  type OrderSheetWish,
} from "./orderWish";
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

export function supplierOrderSheet(charge: OrderCharge, wish: OrderSheetWish): Drawing {
  const { plan, currency } = wish;
  const { supplier } = charge;
  const width = headings.length;
  const above: DrawnRow[] = [
    wordsRow(`Order: ${supplier}`, "title", width, { height: 26 }),
    wordsRow(
      `For ${plan.jobs.map(({ job }) => job).join("; ")}. Amounts in ${currency.sign}. Draft until it is sent.`,
      "subtitle",
      width,
    ),
    ...(wish.complete ? [] : [wordsRow(notComplete, "stop", width)]),
    blankRow,
    headingRow(headings),
  ];
  const heading = above.length - 1;
  const bought = plan.lines.flatMap((line) =>
    line.packs.filter(({ offer }) => offer.supplier === supplier).map((packs) => ({ line, packs })),
  );
  const first = heading + 1;
  const last = heading + bought.length;
  const shipTo = (jobs: readonly string[]): string =>
    [
      ...new Set(
        plan.jobs.flatMap(({ job, shipTo: place }) =>
          jobs.includes(job) && place !== "" ? [place] : [],
        ),
      ),
    ].join("; ");
  const lines = bought.map(({ line, packs }, index) => {
    const place = first + index;
    return row(
      text(line.item),
      text(wish.describe(line.item)),
      sizeCell(line, wish),
      number(packs.offer.packSize, "count"),
      number(packs.count, "count", { look: "input" }),
      moneyCell(packs.offer.price, currency, { look: "input" }),
      formula(
        rounded(`${at(place, packsColumn)}*${at(place, priceColumn)}`, currency.digits),
        majorUnits(packs.cost, currency),
        "money",
      ),
      dateCell(line.needBy),
      dateCell(packs.deadline?.orderBy ?? null),
      text(shipTo(jobsOf(line, plan))),
    );
  });
  const total = charge.goods + charge.madeUp + charge.freight;
  return {
    name: `Order ${supplier}`,
    mark: { kind: "order", subject: supplier },
    columnWidths: headings.map((column) => column.width),
    rows: [
      ...above,
      ...lines,
      bandRow("total", width, {
        0: text("Goods"),
        [totalColumn]: formula(
          `SUM(${down(totalColumn, first, last)})`,
          majorUnits(charge.goods, currency),
          "money",
        ),
      }),
      bandRow("body", width, {
        0: text("Made up to the least order"),
        [totalColumn]: moneyCell(charge.madeUp, currency),
      }),
      bandRow("body", width, {
        0: text("Freight"),
        [totalColumn]: moneyCell(charge.freight, currency),
      }),
      bandRow("total", width, {
        0: text("Total"),
        [totalColumn]: formula(
          `SUM(${down(totalColumn, last + 1, last + 3)})`,
          total / 10 ** currency.digits,
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
      title: "Order",
      caution: "",
    }),
  };
}
