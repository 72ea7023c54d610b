/** From the count to what is bought, step by step, for every item and size. */
import type { Drawing, DrawnCell, DrawnRow } from "../../workbook/drawing";
import { moreWords, stepWords } from "../../core/purchasing/needWords";
import { bandRow, formula, headingRow, number, row, text, wordsRow } from "../cells";
import { notComplete, orderMark, orderSheetName, sizeCell, type OrderSheetWish } from "./orderWish";
import { fittedRow } from "../fittedRow";
import { printSetup } from "../printSetup";
import { down } from "../reference";

const headings = [
  { words: "Item", width: 22 },
  { words: "Size", width: 16, numbers: true },
  { words: "Step", width: 14, middle: true },
  { words: "Job", width: 30 },
  { words: "Pieces", width: 10, middle: true },
  { words: "Because", width: 64 },
] as const;
const piecesColumn = 4;
const widths = headings.map((column) => column.width);
const fitted = (...cells: readonly DrawnCell[]): DrawnRow => fittedRow(row(...cells), widths);

export function orderNeedsSheet(wish: OrderSheetWish): Drawing {
  const { plan, complete, number: orderNumber } = wish;
  const width = headings.length;
  const rows: DrawnRow[] = [
    wordsRow("Order needs: from the count to what is bought", "title", width, { height: 26 }),
    ...(complete ? [] : [wordsRow(notComplete, "stop", width)]),
    headingRow(headings),
  ];
  const heading = rows.length - 1;
  for (const line of plan.lines) {
    if (line.need === null) continue;
    const first = rows.length;
    for (const { kind, job, pieces, because } of line.need.steps) {
      rows.push(
        fitted(
          text(line.item),
          sizeCell(line, wish),
          text(stepWords[kind], { align: "center" }),
          text(job ?? "all jobs"),
          number(pieces, "count", { align: "center" }),
          text(because),
        ),
      );
    }
    rows.push(
      bandRow("total", width, {
        0: text(line.item),
        1: sizeCell(line, wish),
        2: text(line.kind === "cut" ? "to cut" : "to buy", { align: "center" }),
        [piecesColumn]: formula(
          `SUM(${down(piecesColumn, first, rows.length - 1)})`,
          line.need.buy,
          "count",
          { align: "center" },
        ),
        5: text(moreWords(line)),
      }),
    );
  }
  return {
    name: orderSheetName(orderNumber, "needs"),
    mark: orderMark("order needs", orderNumber),
    columnWidths: widths,
    rows,
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: orderNumber ?? "",
      title: "Order needs",
      caution: "",
    }),
  };
}
