/** The rates sheet: the firm's own figures, with a column for each job that differs. */
import type { RateRow } from "../../core/pricing/rates/rateRow";
import { rateBasis, rateRows } from "../../core/pricing/rates/rateRows";
import type { Drawing, DrawnCell } from "../../workbook/drawing";
import { blank, headingRow, number, row, text, wordsRow } from "../cells";
import { fittedRow } from "../fittedRow";
import { printSetup } from "../printSetup";

const fixed = [
  { words: "Rate", width: 38 },
  { words: "Unit", width: 26 },
  { words: "What it means", width: 48 },
  {
    words: "Usual",
    width: 24,
    numbers: true,
    note: "Counts for every job whose own column is blank.",
  },
] as const;

/** The starter's values as the usual ones; blank columns for the jobs. */
export function ratesSheet(name: string, jobs: readonly string[]): Drawing {
  const headings = [
    ...fixed,
    ...jobs.map((job) => ({
      words: job,
      width: 20,
      numbers: true,
      note: "Only what differs from the usual.",
    })),
  ];
  const widths = headings.map(({ width }) => width);
  const heading = 1;
  return {
    name,
    mark: null,
    columnWidths: widths,
    rows: [
      wordsRow(`Every value here is an ${rateBasis}.`, "caution", headings.length),
      fittedRow(headingRow(headings), widths),
      ...rateRows.map((rate) =>
        fittedRow(
          row(
            text(rate.label),
            text(rate.unit),
            text(rate.says),
            starterCell(rate),
            ...jobs.map(() => blank({ look: "input", align: "right" })),
          ),
          widths,
        ),
      ),
    ],
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: rateRows.flatMap((rate: RateRow, index) =>
      rate.kind !== "choice" || rate.choices === undefined
        ? []
        : headings.slice(fixed.length - 1).map((_, column) => ({
            column: fixed.length - 1 + column,
            firstRow: heading + 1 + index,
            lastRow: heading + 1 + index,
            list: rate.choices ?? [],
            othersToo: false,
          })),
    ),
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: "",
      title: name,
      caution: "",
    }),
  };
}

const starterCell = ({ starter }: RateRow): DrawnCell =>
  typeof starter === "number"
    ? number(starter, "general", { look: "input" })
    : starter === ""
      ? blank({ look: "input", align: "right" })
      : text(starter, { look: "input", align: "right" });
