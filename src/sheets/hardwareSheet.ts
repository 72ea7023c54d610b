/**
 * The hardware sheet: what the openings of one job (or of several, one below the other) need, by
 * family, with costs that follow a changed quantity, spare or unit cost as live formulas.
 */
import type { JobEstimate } from "../core/estimate/estimate";
import type { LengthStyle } from "../core/lengths/writeLength";
import type { Drawing, DrawnRow } from "../workbook/drawing";
import { blankRow, headingRow, wordsRow } from "./cells";
import { caution } from "./caution";
import { hardwareColumns, type HardwareColumnKey } from "./hardwareColumns";
import { jobSection } from "./hardwareSection";
import { printSetup } from "./printSetup";
import type { LookUpTable } from "./reference";

export type HardwareWish = {
  readonly jobs: readonly JobEstimate[];
  readonly lengths: LengthStyle;
  readonly withCosts: boolean;
  /** Written before an amount in the headings, such as `$`. */
  readonly currencySign: string;
  /** The items sheet of the same workbook, so that a price changed there moves the totals; else `null`. */
  readonly items: LookUpTable | null;
  /** What the count stands on, such as `Starter kit book · invented starter prices`. */
  readonly basis: string;
};

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
    headings,
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
