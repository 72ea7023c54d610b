/**
 * Sheets of an owner's to start with: rates, quotation terms, ranges, alternates, what a job really
 * cost. They belong to the person, so writing them touches nothing that stands.
 */
import type { CellValue } from "../../core/base/cell";
import { majorUnits } from "../../core/money/writeMoney";
import type { JobActuals } from "../../core/pricing/actuals/actuals";
import { starterRanges } from "../../core/pricing/chances/ownerRanges";
import { starterTerms } from "../../core/pricing/quotationTerms";
import type { ActualKind } from "../../core/pricing/actuals/typedActuals";
import {
  actualsSheet,
  alternatesSheet,
  rangesSheet,
  termsSheet,
} from "../../sheets/owner/ownerSheets";
import { ratesSheet } from "../../sheets/owner/ratesSheet";
import type { MeasureStyle } from "../../core/measures/measures";
import type { Drawing } from "../../workbook/drawing";
import { currencyIn, type Settings } from "../settings";

/** With more jobs than this a column for each would bury the usual rates; it is added by its job's name. */
const mostJobColumns = 12;

export const ratesDrawing = (jobs: readonly string[], style: MeasureStyle): Drawing =>
  ratesSheet("Rates", jobs.length > mostJobColumns ? [] : jobs, style);

/** Every cost, bag and item of a job with its estimate, and a blank for what it turned out to be. */
export function actualsDrawing(
  { job, costs, bags, pieces }: JobActuals,
  settings: Settings,
): Drawing {
  const currency = currencyIn(settings);
  const line = (kind: ActualKind, name: string, estimated: number): readonly CellValue[] => [
    job,
    kind,
    name,
    null,
    estimated,
  ];
  return actualsSheet(
    `Actuals ${job}`,
    [
      ...costs.map(({ name, estimated }) => line("cost", name, majorUnits(estimated, currency))),
      ...bags.map(({ bag, estimated }) => line("hours", bag, Math.round(estimated / 0.6) / 100)),
      ...pieces.map(({ item, counted }) => line("pieces", item, counted)),
    ],
    "Type what the job really cost, took and used. Rows of one name add up: add a row for each invoice.",
  );
}

/** The starter's terms, which are invented. */
export const termsDrawing = (): Drawing =>
  termsSheet(
    starterTerms.map(([kind, value]) => [kind, "", value]),
    "Starter text, invented: replace it with your own.",
  );

/** With a row to show how an alternate is typed, which adds nothing. */
export const alternatesDrawing = (job: string): Drawing =>
  alternatesSheet(
    [["Example: a closer on each door", "option", job, "material", "Closers", 1, 0]],
    "Type what each alternate adds to a job or takes away, or what it changes of the schedule, such as change, Transom, To no. The row that stands here is an example.",
  );

/** What the sheets of prices are made from: rates, terms, ranges, and room for alternates. */
export const priceSetUpDrawings = (style: MeasureStyle): readonly Drawing[] => [
  ratesDrawing([], style),
  termsDrawing(),
  rangesSheet(starterRanges, "Starter ranges, invented: replace them with your own."),
  alternatesSheet([], null),
];
