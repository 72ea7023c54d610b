/** All jobs beside one another for the owner: what is most at risk first. */
import { dateText } from "../../core/base/date";
import { majorUnits } from "../../core/money/writeMoney";
import type { MarginTable } from "../../core/pricing/marginTable";
import { shareOf } from "../../core/pricing/rates/percent";
import type { Drawing, DrawnCell } from "../../workbook/drawing";
import { bandRow, formula, headingRow, number, row, text, wordsRow } from "../cells";
import { fittedRow } from "../fittedRow";
import { printSetup } from "../printSetup";
import { at, down } from "../reference";

const headings = [
  { words: "Job", width: 30 },
  { words: "Cost", width: 15, numbers: true },
  { words: "Price", width: 15, numbers: true },
  { words: "Profit", width: 15, numbers: true, note: "price - cost" },
  { words: "Markup", width: 10, numbers: true, note: "profit / cost" },
  { words: "Margin", width: 10, numbers: true, note: "profit / price" },
  { words: "Target margin", width: 10, numbers: true },
  { words: "Gap", width: 10, numbers: true, note: "margin less target" },
  {
    words: "Short of target",
    width: 14,
    numbers: true,
    note: "what the price lacks to keep the target",
  },
  { words: "Oldest price", width: 13 },
  { words: "Lines not priced", width: 11, numbers: true },
  { words: "What to know", width: 48 },
] as const;

/** Beyond so many jobs nobody reads a chart. */
const mostInChart = 25;

export function marginsSheet({ rows, total }: MarginTable, currencySign: string): Drawing {
  const width = headings.length;
  const widths = headings.map((column) => column.width);
  const first = 3;
  const last = first + rows.length - 1;
  const money = (amount: number): DrawnCell =>
    number(majorUnits(amount as typeof total.cost), "money");
  const share = (value: number | null): number | string => value ?? "";
  const ratio = (place: number, over: number, value: number | null): DrawnCell =>
    formula(
      `=IF(${at(place, over)}=0,"",${at(place, 3)}/${at(place, over)})`,
      share(value),
      "percent",
    );
  const profit = (place: number, value: number): DrawnCell =>
    formula(`=ROUND(${at(place, 2)}-${at(place, 1)},2)`, value / 100, "money");
  const sum = (column: number, value: number): DrawnCell =>
    formula(rows.length === 0 ? "=0" : `=SUM(${down(column, first, last)})`, value / 100, "money");
  return {
    name: "Margins",
    mark: { kind: "margins", subject: "" },
    columnWidths: widths,
    rows: [
      wordsRow("Margins", "title", width, { height: 26 }),
      wordsRow(
        `Amounts in ${currencySign}. What is most at risk stands first. Cost and price are as they were written: typing on a price sheet does not change them here.`,
        "subtitle",
        width,
      ),
      { ...headingRow(headings), height: 30 },
      ...rows.map((job, index) => {
        const place = first + index;
        const cells = row(
          text(job.job),
          money(job.cost),
          money(job.price),
          profit(place, job.profit),
          ratio(place, 1, job.markup),
          ratio(place, 2, job.margin),
          number(shareOf(job.target), "percent"),
          formula(
            `=IF(${at(place, 5)}="","",${at(place, 5)}-${at(place, 6)})`,
            share(job.gap),
            "percent",
          ),
          money(job.short),
          text(job.oldestPrice === null ? "no date" : dateText(job.oldestPrice)),
          number(job.shareNotPriced, "percent"),
          text(job.isIncomplete ? "NOT COMPLETE: cost and price are only a least" : "", {
            look: job.isIncomplete ? "warn" : "body",
          }),
        );
        return fittedRow(cells, widths);
      }),
      bandRow("total", width, {
        0: text("All jobs"),
        1: sum(1, total.cost),
        2: sum(2, total.price),
        3: sum(3, total.profit),
        4: ratio(last + 1, 1, total.markup),
        5: ratio(last + 1, 2, total.margin),
        8: sum(8, total.short),
      }),
    ],
    frozenRows: first,
    frozenColumns: 1,
    tables: [],
    choices: [],
    charts:
      rows.length === 0
        ? []
        : [
            {
              row: last + 3,
              column: 0,
              width: 620,
              height: 90 + 26 * Math.min(rows.length, mostInChart),
              title:
                rows.length > mostInChart
                  ? `Margin and target of the ${mostInChart} jobs most at risk`
                  : "Margin and target",
              firstRow: first,
              lastRow: Math.min(last, first + mostInChart - 1),
              nameColumn: 0,
              valueColumns: [5, 6],
              headingRow: first - 1,
              format: "percent",
            },
          ],
    print: printSetup({
      orientation: "landscape",
      headingRow: 2,
      subject: "",
      title: "Margins",
      caution: "",
    }),
  };
}
