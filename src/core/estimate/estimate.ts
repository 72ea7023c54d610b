/**
 * The pipeline, start to end. Read this first.
 *
 * 1. The kit book's rows are checked and compiled, with the schedule's further headings as fields.
 * 2. The items table is checked.
 * 3. Schedule rows become openings; a row that cannot be counted is kept aside with its findings.
 * 4. Openings go through the kit book: lines per job, each with the reason for every piece.
 * 5. Where capacities of hanging loads are entered, an opening that is over one is stopped: it gives no count.
 * 6. What persons typed on the hardware sheets is put to the lines: corrections, lines added by hand.
 * 7. Lines are priced and weighed from the items table.
 * 8. Findings of all phases are put in the order of the cells they are about.
 *
 * Nothing is left out in silence: `complete` is false as soon as one row anywhere was not counted.
 */
import type { Finding } from "../base/finding";
import { between, finish, type Steps } from "../base/steps";
import type { Inches } from "../base/units";
import { uncorrected, type CorrectionRules } from "../corrections/correctJob";
import {
  correctJobs,
  noCorrections,
  type CorrectionInput,
  type Corrections,
} from "../corrections/corrections";
import { compileKitBook, type KitBookResult } from "../kitbook/compileKitBook";
import type { KitBook } from "../kitbook/kitBook";
import type { KitBookRows } from "../kitbook/rows";
import type { LengthUnit } from "../lengths/length";
import type { Currency } from "../money/currency";
import { checkOpenings, type CheckedOpenings } from "../openings/checkOpenings";
import type { UncountedRow } from "../openings/opening";
import type { Schedule } from "../openings/openingRow";
import { checkItems, type CheckedItems, type ItemRow, type Items } from "../pricing/item";
import { materialDoubts } from "../pricing/material";
import { nearSizes } from "../takeoff/nearSizes";
import { jobKey, takeOff, type TakeOff } from "../takeoff/takeOff";
import { findingsByOpening, jobEstimate, type JobEstimate, type JobParts } from "./jobEstimate";
import { withoutOverloaded, type OverloadStop } from "./overloadStop";

export type EstimateInput = {
  readonly schedules: readonly Schedule[];
  readonly kitBook: KitBookRows;
  readonly items: readonly ItemRow[];
  /** What a bare number in the schedule means. */
  readonly unit: LengthUnit;
  readonly currency: Currency;
  /** How findings and reasons write a length. */
  readonly showLength: (length: Inches) => string;
  /** What was typed on hardware sheets before; nothing where absent. */
  readonly corrections?: CorrectionInput;
  /** The check of hanging loads, by what is entered; nothing is checked where absent. */
  readonly stopOverloaded?: OverloadStop | undefined;
};

export type Estimate = {
  /** Whether every opening of every job was counted by a kit book without a broken row. */
  readonly complete: boolean;
  readonly jobs: readonly JobEstimate[];
  readonly takeOff: TakeOff;
  readonly kitBook: KitBook;
  readonly items: Items;
  readonly corrections: Corrections;
  /** By cell: kit book, items, schedule rows in order, corrections, then what is about no cell. */
  readonly findings: readonly Finding[];
};

/** What phases 1 to 4 made. */
export type Phases = {
  readonly compiled: KitBookResult;
  readonly checkedItems: CheckedItems;
  /** By schedule. */
  readonly checked: readonly CheckedOpenings[];
  readonly taken: TakeOff;
  readonly corrections: CorrectionInput;
  readonly rules: CorrectionRules;
  readonly stopOverloaded?: OverloadStop | undefined;
};

/** Runs all phases. Total: any input gives an estimate, with findings for what is wrong in it. */
export function estimate(input: EstimateInput): Estimate {
  const { schedules, unit, showLength } = input;
  const compiled = compileKitBook(input.kitBook, headingsOf(schedules));
  const checkedItems = checkItems(input.items, input.currency);
  const typeNames = compiled.book.types.map((type) => type.name);
  const checked = schedules.map((schedule) => checkOpenings(schedule, typeNames, unit));
  const openings = checked.flatMap((schedule) => schedule.openings);
  const taken = takeOff(compiled.book, openings, showLength);
  const corrections = input.corrections ?? noCorrections;
  const rules = { unit, showLength };
  const { stopOverloaded } = input;
  return finish(
    finishEstimate({ compiled, checkedItems, checked, taken, corrections, rules, stopOverloaded }),
  );
}

/** The further headings of all schedules, each once: fields that the kit book's formulas may use. */
export const headingsOf = (
  schedules: readonly Pick<Schedule, "otherHeadings">[],
): readonly string[] => [
  ...new Set(schedules.flatMap((schedule) => Object.values(schedule.otherHeadings))),
];

/** How much of the way is done once loads are checked, which takes longest where it is done at all. */
const whenLoadsAreChecked = 0.7;

/** Phases 5 to 8, a job a step, or more where its loads are checked. */
export function* finishEstimate(phases: Phases): Steps<Estimate> {
  const { compiled, checkedItems, checked } = phases;
  const { taken, loads } = yield* between(
    0,
    whenLoadsAreChecked,
    withoutOverloaded(phases.taken, checkedItems.items, phases.stopOverloaded),
  );
  const unread = checked.flatMap((schedule) => schedule.uncounted);
  const aboutOpening = findingsByOpening(taken.findings);
  const parts = jobsOf(taken, unread);
  const corrections = correctJobs(
    parts.map((part) => part.takeOff),
    phases.corrections,
    phases.rules,
  );
  const jobs: JobEstimate[] = [];
  for (const [index, part] of parts.entries()) {
    yield whenLoadsAreChecked + ((1 - whenLoadsAreChecked) * index) / (parts.length + 1);
    const corrected = corrections.jobs[index] ?? uncorrected(part.takeOff.lines);
    const { book } = compiled;
    jobs.push(
      jobEstimate(
        { ...part, loads: loads.get(jobKey(part.job)) ?? null, corrected },
        { book, items: checkedItems.items, aboutOpening },
      ),
    );
  }
  const scheduleFindings = [
    ...checked.flatMap((schedule) => schedule.findings),
    ...taken.findings,
    ...nearSizes(taken.jobs, phases.rules.showLength),
  ].sort(byPlace);
  const findings = [
    ...compiled.findings,
    ...checkedItems.findings,
    ...scheduleFindings,
    ...corrections.findings.map(({ finding }) => finding),
    ...materialDoubts(jobs.map((job) => job.material)),
  ];
  return {
    complete: findings.every((finding) => finding.level !== "stop"),
    jobs,
    takeOff: taken,
    kitBook: compiled.book,
    items: checkedItems.items,
    corrections,
    findings,
  };
}

/** Every job that has an opening or a row that could not be read; those without any count come last. */
function jobsOf(taken: TakeOff, unread: readonly UncountedRow[]): readonly JobParts[] {
  const rest = new Map<string, UncountedRow[]>();
  for (const row of unread) {
    const rows = rest.get(jobKey(row.job));
    if (rows === undefined) rest.set(jobKey(row.job), [row]);
    else rows.push(row);
  }
  const counted = taken.jobs.map((jobTakeOff) => {
    const uncounted = rest.get(jobKey(jobTakeOff.job)) ?? [];
    rest.delete(jobKey(jobTakeOff.job));
    return { job: jobTakeOff.job, takeOff: jobTakeOff, uncounted };
  });
  const others = [...rest.values()].map((uncounted) => {
    const job = uncounted[0]?.job ?? "";
    return { job, takeOff: { job, openings: [], stopped: [], lines: [] }, uncounted };
  });
  return [...counted, ...others];
}

function byPlace(a: Finding, b: Finding): number {
  if (a.place === null || b.place === null)
    return Number(a.place === null) - Number(b.place === null);
  return (
    a.place.sheet.localeCompare(b.place.sheet, "en") ||
    a.place.row - b.place.row ||
    a.place.column - b.place.column
  );
}
