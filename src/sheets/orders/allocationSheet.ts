/** Whose cost each pack and charge is: shares of the jobs and of stock, to the cent. */
import { cents, type Cents } from "../../core/base/units";
import { majorUnits } from "../../core/money/writeMoney";
import { addShares, type Share } from "../../core/purchasing/orders/shares";
import type { Drawing, DrawnCell, DrawnRow } from "../../workbook/drawing";
import { columnName } from "../../core/base/cell";
import { bandRow, formula, headingRow, number, row, text, wordsRow } from "../cells";
import { moneyCell, notComplete, orderMark, orderSheetName, type RecordedOrder } from "./orderWish";
import { fittedRow } from "../fittedRow";
import { printSetup } from "../printSetup";
import { at, down, rounded } from "../reference";

const fixed = [
  { words: "Supplier", width: 24 },
  { words: "Item", width: 22 },
  { words: "Size", width: 16, numbers: true },
  { words: "Packs", width: 9, numbers: true },
  { words: "Cost", width: 13, numbers: true },
] as const;
const costColumn = 4;
const firstShare = fixed.length;

/** Drawn from the record alone. */
export function allocationSheet(order: RecordedOrder): Drawing {
  const { contents, currency, number: orderNumber } = order;
  const owners: readonly (string | null)[] = [...contents.jobs.map(({ job }) => job), null];
  const checkColumn = firstShare + owners.length;
  const headings = [
    ...fixed,
    ...owners.map((job) => ({ words: job ?? "Stock", width: 16, numbers: true })),
    { words: "Not shared", width: 12, numbers: true, note: "Cost less its shares: always zero." },
  ];
  const width = headings.length;
  const widths = headings.map((column) => column.width);
  const above: DrawnRow[] = [
    wordsRow("Allocation: whose cost it is", "title", width, { height: 26 }),
    wordsRow(
      `Amounts in ${currency.sign}, shared by what each job gets, the odd cent by largest remainder.`,
      "subtitle",
      width,
    ),
    ...(contents.complete ? [] : [wordsRow(notComplete, "stop", width)]),
    fittedRow(headingRow(headings), widths),
  ];
  const heading = above.length - 1;
  const costs = [
    ...contents.packs.map(({ supplier, item, words, count, cost, shares }) => ({
      cells: [
        text(supplier),
        text(item),
        text(words.size, { align: "right" }),
        number(count, "count"),
      ],
      cost,
      shares,
    })),
    ...contents.charges
      .filter(({ madeUp, freight }) => madeUp + freight > 0)
      .map(({ supplier, madeUp, freight, shares }) => ({
        cells: [text(supplier), text("Freight and least order"), text(""), text("")],
        cost: cents(madeUp + freight),
        shares,
      })),
  ];
  const all = addShares(costs.map(({ shares }) => shares));
  const first = heading + 1;
  const last = heading + costs.length;
  const shareOf = (shares: readonly Share[], owner: string | null): Cents =>
    shares.find(({ job }) => job === owner)?.cost ?? cents(0);
  const notShared = (place: number): DrawnCell =>
    formula(
      rounded(
        `${at(place, costColumn)}-SUM(${columnName(firstShare)}${place + 1}:${columnName(checkColumn - 1)}${place + 1})`,
        currency.digits,
      ),
      0,
      "money",
    );
  const sums = [null, ...owners].map((owner, index): [number, DrawnCell] => {
    const amount = index === 0 ? contents.total : shareOf(all, owner);
    const column = costColumn + index;
    return [
      column,
      formula(
        costs.length === 0 ? "0" : `SUM(${down(column, first, last)})`,
        majorUnits(amount, currency),
        "money",
      ),
    ];
  });
  return {
    name: orderSheetName(orderNumber, "allocation"),
    mark: orderMark("allocation", orderNumber),
    columnWidths: widths,
    rows: [
      ...above,
      ...costs.map(({ cells, cost, shares }, index) =>
        row(
          ...cells,
          moneyCell(cost, currency),
          ...owners.map((owner) => moneyCell(shareOf(shares, owner), currency)),
          notShared(first + index),
        ),
      ),
      bandRow("total", width, {
        0: text("Total"),
        ...Object.fromEntries(sums),
        [checkColumn]: notShared(last + 1),
      }),
    ],
    frozenRows: heading + 1,
    frozenColumns: 2,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: orderNumber ?? "",
      title: "Allocation",
      caution: "",
    }),
  };
}
