/**
 * The hardware sheet: what the openings of one job (or of several, one below the other) need, by
 * family, with costs that follow a changed quantity, spare or unit cost as live formulas.
 */
import type { Drawing, DrawnRow } from "../workbook/drawing";
import { blankRow, headingRow, wordsRow } from "./cells";
import { caution } from "./caution";
import { hardwareColumns, type HardwareColumnKey } from "./hardwareColumns";
import { jobSection } from "./hardwareSection";
import type { HardwareWish } from "./hardwareWish";
import { printSetup } from "./printSetup";

/** One drawing with all the jobs of the wish; a job's name is its subject where there is only one. */
export function hardwareSheet(wish: HardwareWish): Drawing {
  const { jobs } = wish;
  const [first] = jobs;
  const subject = jobs.length === 1 && first !== undefined ? first.job : "";
  const columns = hardwareColumns.filter((column) => wish.withCosts || !column.isCost);
  const places = new Map(columns.map((column, index) => [column.key, index]));
  const columnOf = (key: HardwareColumnKey): number | null => places.get(key) ?? null;
  const width = columns.length;

  const headings = headingRow(
    columns.map(({ heading, numbers, note }) => ({
      words: heading.replace("{sign}", wish.currencySign),
      numbers,
      ...(note === undefined ? {} : { note }),
    })),
  );
  const rows: DrawnRow[] = [
    wordsRow(subject === "" ? "Hardware" : `Hardware: ${subject}`, "title", width, { height: 26 }),
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
    rows.push(...jobSection(job, wish, rows.length, width, columnOf));
  }
  return {
    name: subject === "" ? "Hardware" : `Hardware ${subject}`,
    mark: { kind: "hardware", subject },
    columnWidths: columns.map((column) => column.width),
    rows,
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      breaksBefore: breaks,
      subject,
      title: "Hardware",
      caution,
    }),
  };
}
