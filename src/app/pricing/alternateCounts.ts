/** The alternates of a workbook's jobs, those that change the schedule counted again. */
import { cellText } from "../../core/base/cell";
import { makeFinding, type Finding } from "../../core/base/finding";
import { between, type Steps } from "../../core/base/steps";
import {
  countAlternate,
  type ChangeColumn,
  type ChangeColumns,
} from "../../core/estimate/countAlternate";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { namedOpenings } from "../../core/estimate/namedOpenings";
import type { CountBasis, JobRow } from "../../core/estimate/recountJob";
import { nearestName, normalName } from "../../core/formulas/names";
import { standardFields } from "../../core/kitbook/fields";
import { alternateFindings } from "../../core/pricing/alternates/alternateFindings";
import type { TypedAlternate } from "../../core/pricing/alternates/alternateRows";
import { alternatesForJob } from "../../core/pricing/alternates/jobAlternates";
import type { JobToPrice } from "../../core/pricing/priceJob";
import { jobKey } from "../../core/takeoff/takeOff";
import { scheduleColumns } from "../../tables/scheduleColumns";
import { enteredLoads } from "./enteredLoads";
import type { Inputs } from "../reading/inputs";
import { lengthWriter, type Settings } from "../settings";
import type { WorkbookTakeOff } from "../reading/workbookTakeOff";

export type JobAlternates = {
  readonly alternates: NonNullable<JobToPrice["alternates"]>;
  readonly findings: readonly Finding[];
};

export type AlternateCounts = {
  /** Of no job alone: alternates that are for none. */
  readonly findings: readonly Finding[];
  readonly countFor: (base: JobEstimate) => Steps<JobAlternates>;
};

/** An alternate is counted a step or more. What changes nothing of the schedule is not counted. */
export function alternateCounts(
  { inputs, estimate }: WorkbookTakeOff,
  settings: Settings,
  typed: readonly TypedAlternate[],
): AlternateCounts {
  const basis: CountBasis = {
    kitBook: estimate.kitBook,
    items: estimate.items,
    unit: settings.unit,
    showLength: lengthWriter(settings),
    stopOverloaded: enteredLoads(inputs.rates, settings),
    corrections: estimate.corrections.kept,
  };
  const counts = typed.some(({ changes }) => changes.length > 0);
  const rows = counts ? rowsByJob(inputs) : new Map<string, readonly JobRow[]>();
  const columns = changeColumns(inputs);
  return {
    findings: [
      ...jobsUnknown(estimate.jobs, typed),
      ...(counts ? openingsNowhere(estimate.jobs, typed, rows) : []),
    ],
    countFor: function* (base) {
      const own = alternatesForJob(base.job, typed);
      const alternates: JobAlternates["alternates"][number][] = [];
      const findings: Finding[] = [];
      for (const [index, alternate] of own.entries()) {
        const { name, kind, additions, changes } = alternate;
        if (changes.length === 0) {
          alternates.push({ name, kind, additions, counted: null, how: "" });
          continue;
        }
        yield index / own.length;
        const jobRows = rows.get(jobKey(base.job)) ?? [];
        const steps = countAlternate(alternate, base, jobRows, columns, basis);
        const made = yield* between(index / own.length, (index + 1) / own.length, steps);
        findings.push(...made.findings);
        if (made.counted === null) continue;
        const { takeOff, material, uncounted } = made.counted.estimate;
        const counted = { takeOff, material, uncounted: uncounted.map(({ mark }) => mark) };
        alternates.push({ name, kind, additions, counted, how: made.counted.how });
      }
      return { alternates, findings };
    },
  };
}

function rowsByJob({ schedules }: Inputs): ReadonlyMap<string, readonly JobRow[]> {
  const byJob = new Map<string, JobRow[]>();
  for (const schedule of schedules) {
    for (const row of schedule.rows) {
      const key = jobKey(cellText(row.cells.job?.value ?? null).trim() || schedule.sheet);
      const known = byJob.get(key);
      if (known === undefined) byJob.set(key, [{ schedule, row }]);
      else known.push({ schedule, row });
    }
  }
  return byJob;
}

/** What names an opening cannot be changed. */
const fixed: ReadonlySet<string> = new Set(["job", "mark"]);

/** By the names of fields, the words that schedules use for them, and this workbook's own headings. */
function changeColumns({ readings, schedules }: Inputs): ChangeColumns {
  const columns = new Map<string, ChangeColumn>();
  for (const { key, label, words } of scheduleColumns) {
    if (fixed.has(key)) continue;
    const column: ChangeColumn = { label, field: { kind: "standard", key } };
    for (const name of [label, ...words]) columns.set(normalName(name), column);
  }
  for (const { name, label } of standardFields) {
    if (fixed.has(name)) continue;
    columns.set(normalName(name), { label, field: { kind: "standard", key: name } });
  }
  for (const [name, heading] of schedules.flatMap((one) => Object.entries(one.otherHeadings))) {
    columns.set(normalName(heading), { label: heading, field: { kind: "other", name } });
  }
  for (const { key, heading } of readings.flatMap((reading) => reading.columns)) {
    if (fixed.has(key)) columns.delete(normalName(heading));
    else columns.set(normalName(heading), { label: heading, field: { kind: "standard", key } });
  }
  return columns;
}

function jobsUnknown(
  jobs: readonly JobEstimate[],
  typed: readonly TypedAlternate[],
): readonly Finding[] {
  const known = new Set(jobs.map(({ job }) => jobKey(job)));
  return typed
    .filter(({ job }) => job !== "" && !known.has(jobKey(job)))
    .map(({ name, job, place }) => {
      const near = nearestName(
        job,
        jobs.map((each) => each.job),
      );
      const guess = near === undefined ? "" : `Did you mean ${near}? `;
      const values = { name, guess };
      return makeFinding(alternateFindings, "alternate-job-unknown", { place, found: job, values });
    });
}

/** What alternates for every job name that no job has. */
function openingsNowhere(
  jobs: readonly JobEstimate[],
  typed: readonly TypedAlternate[],
  rows: ReadonlyMap<string, readonly JobRow[]>,
): readonly Finding[] {
  return typed
    .filter(({ job }) => job === "")
    .flatMap(({ name, changes }) =>
      changes.flatMap(({ openings }) => {
        const named = jobs.map((job) =>
          namedOpenings(openings, job, rows.get(jobKey(job.job)) ?? []),
        );
        const [first] = named;
        const nowhere = (first?.unknown ?? []).filter((each) =>
          named.every(({ unknown }) => unknown.includes(each)),
        );
        if (nowhere.length === 0) return [];
        const code = named.every(({ isNone }) => isNone)
          ? "alternate-openings-nowhere"
          : "alternate-openings-partly";
        const { place } = openings;
        const found = nowhere.join(", ");
        return [makeFinding(alternateFindings, code, { place, found, values: { name } })];
      }),
    );
}
