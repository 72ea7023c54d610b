/**
 * The hardware sheet: what the openings of one job (or of several, one below the other) need, by
 * family, with a place to correct each line and to add others by hand. Quantities, costs and weights
 * follow what is typed as live formulas.
 */
import { measureStyleOf } from "../../core/measures/measures";
import { shownUnit } from "../../core/measures/writeMeasure";
import type { Drawing, DrawnRow } from "../../workbook/drawing";
import { blankRow, headingRow, wordsRow } from "../cells";
import { caution } from "../caution";
import { titleRow } from "../fittedRow";
import { hardwareLayout } from "./hardwareLayout";
import { jobSection } from "./hardwareSection";
import { lostRows } from "./hardwareStrays";
import type { HardwareWish } from "./hardwareWish";
import { printSetup } from "../printSetup";

/** One drawing with all the jobs of the wish; a job's name is its subject where there is only one. */
export function hardwareSheet(wish: HardwareWish): Drawing {
  const { jobs } = wish;
  const [first] = jobs;
  const subject = jobs.length === 1 && first !== undefined ? first.job : "";
  const layout = hardwareLayout(wish);
  const { columns, width } = layout;
  const widths = columns.map((column) => column.width);

  const weight = shownUnit("weight", measureStyleOf(wish.lengths)).name;
  const headings = headingRow(
    columns.map(({ heading, numbers, note }) => ({
      words: heading.replace("{sign}", wish.currencySign).replace("{weight}", weight),
      numbers,
      ...(note === undefined ? {} : { note }),
    })),
  );
  const rows: DrawnRow[] = [
    titleRow(subject === "" ? "Hardware" : `Hardware: ${subject}`, widths),
    wordsRow(wish.basis, "subtitle", width),
    wordsRow(caution, "caution", width),
    blankRow,
    { ...headings, height: 30 },
  ];
  const heading = rows.length - 1;
  const breaks: number[] = [];
  for (const job of jobs) {
    if (job !== first) {
      breaks.push(rows.length);
    }
    rows.push(...jobSection(layout, job, rows.length));
  }
  rows.push(...lostRows(layout, wish.lost ?? []));
  return {
    name: subject === "" ? "Hardware" : `Hardware ${subject}`,
    mark: { kind: "hardware", subject },
    columnWidths: widths,
    rows,
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      // The names of the rows, in the last column, are for us and would come out clipped.
      columns: width - 1,
      breaksBefore: breaks,
      subject,
      title: "Hardware",
      caution,
    }),
  };
}
