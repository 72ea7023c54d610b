/** One job counted again from its rows of the schedule, some of which say otherwise. */
import type { Finding } from "../base/finding";
import { between, type Steps } from "../base/steps";
import type { Correction } from "../corrections/correction";
import { correctJob } from "../corrections/correctJob";
import { jobOf } from "../corrections/rowName";
import { checkOpenings } from "../openings/checkOpenings";
import type { OpeningRow, Schedule } from "../openings/openingRow";
import { jobKey, takeOff, type JobTakeOff } from "../takeoff/takeOff";
import type { Estimate, EstimateInput } from "./estimate";
import { findingsByOpening, jobEstimate, type JobEstimate } from "./jobEstimate";
import { withoutOverloaded } from "./overloadStop";

/** A row with the schedule that it is of, whose headings and units it is read by. */
export type JobRow = { readonly schedule: Schedule; readonly row: OpeningRow };

/** Tells a row of the schedules from every other. */
export const scheduleRowKey = ({ place }: Pick<OpeningRow, "place">): string =>
  `${place.sheet}\n${place.row}`;

/** What every count of a workbook goes by. */
export type CountBasis = Pick<EstimateInput, "unit" | "showLength" | "stopOverloaded"> &
  Pick<Estimate, "kitBook" | "items"> & {
    /** What was typed on hardware sheets, of every job: it counts again too. */
    readonly corrections: readonly Correction[];
  };

export type Recount = {
  readonly estimate: JobEstimate;
  /** Of the rows, the kit book and the loads. */
  readonly findings: readonly Finding[];
};

/** Counts `rows`, all of them of the job, as the pipeline would: the same rows give the same count. */
export function* recountJob(
  job: string,
  rows: readonly JobRow[],
  basis: CountBasis,
): Steps<Recount> {
  const { kitBook, items, unit, showLength } = basis;
  const types = kitBook.types.map(({ name }) => name);
  const checked = schedulesOf(rows).map((schedule) => checkOpenings(schedule, types, unit));
  yield 0.2;
  const counted = takeOff(
    kitBook,
    checked.flatMap(({ openings }) => openings),
    showLength,
  );
  const stopped = withoutOverloaded(counted, items, basis.stopOverloaded);
  const { taken, loads } = yield* between(0.5, 1, stopped);
  const none: JobTakeOff = { job, openings: [], stopped: [], lines: [] };
  const jobTakeOff: JobTakeOff = { ...(taken.jobs[0] ?? none), job };
  const own = basis.corrections.filter(({ name }) => jobKey(jobOf(name)) === jobKey(job));
  const corrected = correctJob(jobTakeOff, own, { unit, showLength }, () => undefined);
  const estimate = jobEstimate(
    {
      job,
      takeOff: jobTakeOff,
      uncounted: checked.flatMap(({ uncounted }) => uncounted),
      loads: loads.get(jobKey(job)) ?? null,
      corrected,
    },
    { book: kitBook, items, aboutOpening: findingsByOpening(taken.findings) },
  );
  return {
    estimate,
    findings: [...checked.flatMap(({ findings }) => findings), ...taken.findings],
  };
}

/** The schedules that the rows are of, each with only these rows. */
function schedulesOf(rows: readonly JobRow[]): readonly Schedule[] {
  const bySchedule = new Map<Schedule, OpeningRow[]>();
  for (const { schedule, row } of rows) {
    const known = bySchedule.get(schedule);
    if (known === undefined) bySchedule.set(schedule, [row]);
    else known.push(row);
  }
  return [...bySchedule].map(([schedule, own]) => ({ ...schedule, rows: own }));
}
