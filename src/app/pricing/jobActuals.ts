/**
 * Actual against estimate: what was typed on the workbook's sheets of actuals, the differences, and
 * what would have fitted: minutes for the kit book and spares for the items, to accept one by one.
 */
import { cellText, isBlank, type CellPlace } from "../../core/base/cell";
import type { Finding } from "../../core/base/finding";
import {
  bagDifferences,
  costDifferences,
  jobOutcome,
  type Difference,
  type JobActuals,
  type JobOutcome,
} from "../../core/pricing/actuals/actuals";
import { hasActuals } from "../../core/pricing/actuals/typedActuals";
import {
  suggestMinutes,
  suggestSpares,
  type Suggestion,
} from "../../core/pricing/actuals/suggestions";
import type { Inputs } from "../reading/inputs";

/** A suggestion, and the cell to change; `place` is `null` where no sheet holds it, as the starter's. */
export type PlacedSuggestion = Suggestion & { readonly place: CellPlace | null };

export type ActualsReport = {
  /** Those of which something was typed. */
  readonly jobs: readonly JobActuals[];
  /** By job, in the same order. */
  readonly outcomes: readonly JobOutcome[];
  /** Cents, by material family and other cost. */
  readonly costs: readonly Difference[];
  /** Minutes, by bag: the steps of the work. */
  readonly bags: readonly Difference[];
  readonly suggestions: readonly PlacedSuggestion[];
};

/** Every job's estimate, with what was typed of it. */
export type WorkbookActuals = {
  readonly jobs: readonly JobActuals[];
  readonly findings: readonly Finding[];
};

export function actualsReport(
  actuals: WorkbookActuals,
  inputs: Pick<Inputs, "kitBook" | "items">,
): ActualsReport {
  const jobs = actuals.jobs.filter(hasActuals);
  return {
    jobs,
    outcomes: jobs.map(jobOutcome),
    costs: costDifferences(jobs),
    bags: bagDifferences(jobs),
    suggestions: [...minutesSuggested(jobs, inputs), ...sparesSuggested(jobs, inputs)],
  };
}

/** What a suggestion calls the kit book's part at `index`. */
export const minutesRow = (index: number): string => `parts ${index + 1}`;

function minutesSuggested(
  jobs: readonly JobActuals[],
  { kitBook }: Pick<Inputs, "kitBook">,
): readonly PlacedSuggestion[] {
  const rows = kitBook.parts.flatMap(({ bag, item, minutes }, index) => {
    // A blank is work done with the part before it: nothing to change.
    if (isBlank(minutes.value)) return [];
    const timed = {
      row: minutesRow(index),
      number: index + 1,
      bag: cellText(bag.value).trim(),
      item: cellText(item.value).trim(),
      minutes: cellText(minutes.value).trim(),
    };
    return [{ timed, place: minutes.place }];
  });
  const places = new Map(rows.map(({ timed, place }) => [timed.row, place]));
  return suggestMinutes(
    jobs,
    rows.map(({ timed }) => timed),
  ).map((suggestion) => ({ ...suggestion, place: places.get(suggestion.row) ?? null }));
}

function sparesSuggested(
  jobs: readonly JobActuals[],
  { items }: Pick<Inputs, "items">,
): readonly PlacedSuggestion[] {
  const spared = items.map(({ code, sparesPercent }) => ({
    item: cellText(code.value).trim(),
    typed: sparesPercent === undefined ? "" : cellText(sparesPercent.value).trim(),
    place: sparesPercent?.place ?? null,
  }));
  const places = new Map(spared.map(({ item, place }) => [item, place]));
  return suggestSpares(
    jobs,
    spared.map(({ item, typed }) => ({
      item,
      sparesPercent: Number(typed.replace(/%$/, "")) || 0,
    })),
  ).map((suggestion) => ({ ...suggestion, place: places.get(suggestion.item) ?? null }));
}
