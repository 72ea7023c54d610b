/**
 * The pipeline, start to end. Read this first.
 *
 * 1. The kit book's rows are checked and compiled, with the schedule's further headings as fields.
 * 2. The items table is checked.
 * 3. Schedule rows become openings; a row that cannot be counted is kept aside with its findings.
 * 4. Openings go through the kit book: lines per job, each with the reason for every piece.
 * 5. What persons typed on the hardware sheets is put to the lines: corrections, lines added by hand.
 * 6. Lines are priced and weighed from the items table.
 * 7. Findings of all phases are put in the order of the cells they are about.
 *
 * Nothing is left out in silence: `complete` is false as soon as one row anywhere was not counted.
 */
import type { Finding } from "../base/finding";
import { finish, type Steps } from "../base/steps";
import type { Inches } from "../base/units";
import { uncorrected, type CorrectionRules, type JobCorrections } from "../corrections/correctJob";
import {
  correctJobs,
  noCorrections,
  type CorrectionInput,
  type Corrections,
} from "../corrections/corrections";
import { compileKitBook, type KitBookResult } from "../kitbook/compileKitBook";
import { typeKey, type KitBook } from "../kitbook/kitBook";
import type { KitBookRows } from "../kitbook/rows";
import type { LengthUnit } from "../lengths/length";
import type { Currency } from "../money/currency";
import { checkOpenings, type CheckedOpenings } from "../openings/checkOpenings";
import type { Opening, UncountedRow } from "../openings/opening";
import type { Schedule } from "../openings/openingRow";
import { checkItems, type CheckedItems, type ItemRow, type Items } from "../pricing/item";
import { materialDoubts, priceMaterial, type Material } from "../pricing/material";
import { jobKey, takeOff, type JobTakeOff, type TakeOff } from "../takeoff/takeOff";

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
};

export type JobEstimate = {
  readonly job: string;
  /** Rows of the schedule that are openings of this job, counted or not. */
  readonly rows: number;
  /** Rows that gave no count, from the schedule's reading and from the kit book. */
  readonly uncounted: readonly UncountedRow[];
  /** Counted, but by a kit book that has bad rows for them. */
  readonly partly: readonly PartlyCounted[];
  /** What is counted, before corrections. */
  readonly takeOff: JobTakeOff;
  readonly corrections: JobCorrections;
  /** Of the lines after corrections. */
  readonly material: Material;
};

/** Openings of a type of which the kit book has rows that do not work: some of their hardware may be missing. */
export type PartlyCounted = {
  readonly type: string;
  readonly badRows: number;
  readonly openings: readonly Opening[];
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
  return finish(finishEstimate({ compiled, checkedItems, checked, taken, corrections, rules }));
}

/** The further headings of all schedules, each once: fields that the kit book's formulas may use. */
export const headingsOf = (
  schedules: readonly Pick<Schedule, "otherHeadings">[],
): readonly string[] => [
  ...new Set(schedules.flatMap((schedule) => Object.values(schedule.otherHeadings))),
];

/** Phases 5 to 7, a job a step. */
export function* finishEstimate(phases: Phases): Steps<Estimate> {
  const { compiled, checkedItems, checked, taken } = phases;
  const unread = checked.flatMap((schedule) => schedule.uncounted);
  const aboutOpening = findingsByOpening(taken.findings);
  const parts = jobsOf(taken, unread);
  const corrections = correctJobs(
    parts.map((part) => part.takeOff),
    phases.corrections,
    phases.rules,
  );
  const jobs: JobEstimate[] = [];
  for (const [index, { job, takeOff: jobTakeOff, uncounted }] of parts.entries()) {
    yield index / (parts.length + 1);
    const corrected = corrections.jobs[index] ?? uncorrected(jobTakeOff.lines);
    jobs.push({
      job,
      rows: jobTakeOff.openings.length + uncounted.length,
      uncounted: [...uncounted, ...stoppedRows(jobTakeOff, aboutOpening)].sort(
        (a, b) => a.place.row - b.place.row,
      ),
      partly: partlyCounted(jobTakeOff, compiled.book),
      takeOff: jobTakeOff,
      corrections: corrected,
      material: priceMaterial(corrected.lines, checkedItems.items),
    });
  }
  yield parts.length / (parts.length + 1);
  const scheduleFindings = [
    ...checked.flatMap((schedule) => schedule.findings),
    ...taken.findings,
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

function partlyCounted(
  { openings, stopped }: JobTakeOff,
  { types }: KitBook,
): readonly PartlyCounted[] {
  const bad = new Map(
    types.flatMap(({ name, broken }) => (broken.length === 0 ? [] : [[typeKey(name), broken]])),
  );
  if (bad.size === 0) return [];
  const isStopped = new Set(stopped);
  const byType = new Map<string, Opening[]>();
  for (const opening of openings) {
    if (isStopped.has(opening) || !bad.has(typeKey(opening.type))) continue;
    const alike = byType.get(opening.type) ?? [];
    alike.push(opening);
    byType.set(opening.type, alike);
  }
  return [...byType].map(([type, ofType]) => ({
    type,
    badRows: bad.get(typeKey(type))?.length ?? 0,
    openings: ofType,
  }));
}

type JobParts = {
  readonly job: string;
  readonly takeOff: JobTakeOff;
  readonly uncounted: readonly UncountedRow[];
};

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

const openingKey = (job = "", mark = ""): string => `${jobKey(job)}\n${mark}`;

function findingsByOpening(findings: readonly Finding[]): ReadonlyMap<string, readonly Finding[]> {
  const byOpening = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = openingKey(finding.job, finding.mark);
    const group = byOpening.get(key);
    if (group === undefined) byOpening.set(key, [finding]);
    else group.push(finding);
  }
  return byOpening;
}

const stoppedRows = (
  { stopped }: JobTakeOff,
  findings: ReadonlyMap<string, readonly Finding[]>,
): readonly UncountedRow[] =>
  stopped.map(({ place, job, mark }) => ({
    place,
    job,
    mark,
    findings: findings.get(openingKey(job, mark)) ?? [],
  }));

function byPlace(a: Finding, b: Finding): number {
  if (a.place === null || b.place === null)
    return Number(a.place === null) - Number(b.place === null);
  return (
    a.place.sheet.localeCompare(b.place.sheet, "en") ||
    a.place.row - b.place.row ||
    a.place.column - b.place.column
  );
}
