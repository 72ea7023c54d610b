/**
 * Actual against estimate: each job, each cost, each bag of work, and what would have fitted. Actuals
 * are typed on a sheet of the person's; this one is written anew from it.
 */
import { placeName, type CellPlace } from "../../core/base/cell";
import type { Difference, JobOutcome } from "../../core/pricing/actuals/actuals";
import type { Suggestion } from "../../core/pricing/actuals/suggestions";
import type { Drawing, DrawnCell, DrawnRow, NumberFormat } from "../../workbook/drawing";
import { blankRow, formula, headingRow, number, row, text, wordsRow } from "../cells";
import { fittedRow } from "../fittedRow";
import { printSetup } from "../printSetup";
import { at } from "../reference";

export type ReportedActuals = {
  readonly outcomes: readonly JobOutcome[];
  readonly costs: readonly Difference[];
  readonly bags: readonly Difference[];
  readonly suggestions: readonly (Suggestion & { readonly place: CellPlace | null })[];
};

const columns = [36, 15, 18, 18, 18, 60];
const width = columns.length;

const fitted = (drawn: DrawnRow): DrawnRow => fittedRow(drawn, columns);

const headingsOf = (what: string, last: string): DrawnRow =>
  headingRow([
    { words: what },
    { words: "Estimated", numbers: true },
    { words: "Actual", numbers: true },
    { words: "Over", numbers: true, note: "Actual less estimated." },
    { words: "Of the estimate", numbers: true },
    { words: last },
  ]);

export function actualsReportSheet(report: ReportedActuals, currencySign: string): Drawing {
  const rows: DrawnRow[] = [
    wordsRow("Actual against estimate", "title", width, { height: 26 }),
    wordsRow(
      `Amounts in ${currencySign}. Type what jobs cost, took and used on a sheet of actuals, and write again.`,
      "subtitle",
      width,
    ),
  ];
  const group = (title: string, words: DrawnRow): void => {
    rows.push(blankRow, wordsRow(title, "group", width), fitted(words));
  };
  const compared = (
    name: string,
    [estimated, actual]: readonly [number, number],
    format: NumberFormat,
    words: string,
  ): void => {
    const place = rows.length;
    const over = formula(`=${at(place, 2)}-${at(place, 1)}`, actual - estimated, format);
    const share = formula(
      `=IF(${at(place, 1)}=0,"",${at(place, 3)}/${at(place, 1)})`,
      estimated === 0 ? "" : (actual - estimated) / estimated,
      "percent",
    );
    const cells: readonly DrawnCell[] = [number(estimated, format), number(actual, format)];
    rows.push(fitted(row(text(name), ...cells, over, share, text(words))));
  };
  group("Jobs", headingsOf("Job", "Not typed yet, and taken as estimated"));
  for (const { job, estimated, actual, notTyped } of report.outcomes) {
    compared(job, [estimated / 100, actual / 100], "money", notTyped.join(", "));
  }
  group("Costs of all these jobs", headingsOf("Cost", "Jobs"));
  for (const { name, estimated, actual, jobs } of report.costs) {
    compared(name, [estimated / 100, actual / 100], "money", jobs.join(", "));
  }
  group("Hours of all these jobs, by bag", headingsOf("Bag", "Jobs"));
  for (const { name, estimated, actual, jobs } of report.bags) {
    compared(name, [estimated / 60, actual / 60], "hours", jobs.join(", "));
  }
  group(
    "What would have fitted: accept each by typing it into its cell",
    headingRow(["Item", "What", "Cell", "Now", "Rather", "Because"].map((words) => ({ words }))),
  );
  for (const { kind, item, row: bookRow, from, to, because, place } of report.suggestions) {
    const cell = place === null ? `starter ${bookRow}` : placeName(place);
    rows.push(fitted(row(text(item), text(kind), text(cell), text(from), text(to), text(because))));
  }
  return {
    name: "Actual against estimate",
    mark: { kind: "actuals", subject: "" },
    columnWidths: columns,
    rows,
    frozenRows: 0,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: 0,
      subject: "",
      title: "Actual against estimate",
      caution: "",
    }),
  };
}
