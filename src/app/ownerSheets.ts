/**
 * Sheets of an owner's to start with: rates, what a job really cost, the terms of quotations. They
 * belong to the person, so writing them touches nothing that stands.
 */
import type { CellValue } from "../core/base/cell";
import { majorUnits } from "../core/money/writeMoney";
import type { JobActuals } from "../core/pricing/actuals";
import { starterTerms, termKinds } from "../core/pricing/quotationTerms";
import { actualKinds } from "../core/pricing/typedActuals";
import { ratesSheet } from "../sheets/ratesSheet";
import { typedTableSheet } from "../sheets/typedTableSheet";
import { actualColumns } from "../tables/actualTable";
import { termHeadings } from "../tables/termsTable";
import type { Drawing } from "../workbook/drawing";
import { currencyIn, type Settings } from "./settings";

/** With more jobs than this a column for each would bury the usual rates; it is added by its job's name. */
const mostJobColumns = 12;

export const ratesDrawing = (jobs: readonly string[]): Drawing =>
  ratesSheet("Rates", jobs.length > mostJobColumns ? [] : jobs);

/** Every cost, bag and item of a job with its estimate, and a blank for what it turned out to be. */
export function actualsDrawing(
  { job, costs, bags, pieces }: JobActuals,
  settings: Settings,
): Drawing {
  const currency = currencyIn(settings);
  const [jobColumn, kindColumn, nameColumn, actualColumn] = actualColumns.map(({ label }) => label);
  const line = (
    kind: (typeof actualKinds)[number],
    name: string,
    estimated: number,
  ): CellValue[] => [job, kind, name, null, estimated];
  return typedTableSheet({
    name: `Actuals ${job}`,
    columns: [
      { words: jobColumn ?? "", width: 30 },
      { words: kindColumn ?? "", width: 12, list: actualKinds },
      { words: nameColumn ?? "", width: 36 },
      { words: actualColumn ?? "", width: 14, format: "general", note: "Blank says nothing yet." },
      { words: "Estimated", width: 14, format: "decimal" },
    ],
    rows: [
      ...costs.map(({ name, estimated }) => line("cost", name, majorUnits(estimated, currency))),
      ...bags.map(({ bag, estimated }) => line("hours", bag, Math.round(estimated / 0.6) / 100)),
      ...pieces.map(({ item, counted }) => line("pieces", item, counted)),
    ],
    notice:
      "Type what the job really cost, took and used. Rows of one name add up: add a row for each invoice.",
  });
}

/** The starter's terms, which are invented. */
export const termsDrawing = (): Drawing =>
  typedTableSheet({
    name: "Quotation terms",
    columns: [
      { words: termHeadings[0], width: 22, list: termKinds.map(({ label }) => label) },
      { words: termHeadings[1], width: 30, note: "Blank is for every job." },
      { words: termHeadings[2], width: 80 },
    ],
    rows: starterTerms.map(([kind, value]) => [
      termKinds.find(({ key }) => key === kind)?.label ?? kind,
      null,
      value,
    ]),
    notice: "Starter text, invented: replace it with your own.",
  });
