/** The rates sheet: the firm's own figures, with a column for each job that differs. */
import type { MeasureStyle } from "../../core/measures/measures";
import { shownAmount, shownUnit } from "../../core/measures/writeMeasure";
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

/**
 * The starter's values as the usual ones; blank columns for the jobs. In metric units a weight, load
 * or length is asked for in those: its Unit cell says what a bare number means.
 */
export function ratesSheet(
  name: string,
  jobs: readonly string[],
  style: MeasureStyle = "pounds",
): Drawing {
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
            text(unitOf(rate, style)),
            text(rate.says),
            starterCell(rate, style),
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

const unitOf = ({ unit, measure }: RateRow, style: MeasureStyle): string =>
  style === "pounds" || measure === undefined ? unit : shownUnit(measure, style).name;

const starterCell = ({ starter, measure }: RateRow, style: MeasureStyle): DrawnCell =>
  typeof starter === "number"
    ? number(
        style === "pounds" || measure === undefined
          ? starter
          : Number(shownAmount(starter, measure, style).toFixed(2)),
        "general",
        { look: "input" },
      )
    : starter === ""
      ? blank({ look: "input", align: "right" })
      : text(starter, { look: "input", align: "right" });
