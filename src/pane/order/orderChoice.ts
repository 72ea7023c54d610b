/** Which jobs of which workbooks an order is for, and what the person decided about their differences. */
import { chooseJobs, type JobsFile } from "../../app/orders/chooseJobs";
import type { OtherInputs } from "../../app/reading/inputs";
import { differences, type Deciding } from "../../app/orders/orderDifferences";
import type { Finding } from "../../core/base/finding";
import { groupBy } from "../../core/base/groupBy";
import { jobKey } from "../../core/takeoff/takeOff";

/** `own`: each workbook by its own; else the name of the workbook whose holds. `null`: undecided. */
type Holds = { readonly kind: "own" } | { readonly kind: "of"; readonly file: string } | null;

export type OrderChoice = {
  /** By `jobId`. What is left out is remembered, so that a job that comes later is in. */
  readonly leftOut: ReadonlySet<string>;
  /** By `jobKey`: jobs of one name in two workbooks that are two jobs. */
  readonly twoJobs: ReadonlySet<string>;
  readonly kitBook: Holds;
  readonly items: Holds;
};

export const firstChoice: OrderChoice = {
  leftOut: new Set(),
  twoJobs: new Set(),
  kitBook: null,
  items: null,
};

export const jobId = (file: string, job: string): string => `${file}\n${jobKey(job)}`;

/** A job's name that chosen jobs of several workbooks have. */
export type JobClash = { readonly job: string; readonly files: readonly string[] };

type FileJob = { readonly file: string; readonly job: string };

const chosenIn = (files: readonly JobsFile[], { leftOut }: OrderChoice): readonly FileJob[] =>
  files.flatMap(({ file, takeOff }) =>
    takeOff.estimate.jobs
      .filter(({ job }) => !leftOut.has(jobId(file, job)))
      .map(({ job }) => ({ file, job })),
  );

/** Decided or not. */
export const jobClashes = (files: readonly JobsFile[], choice: OrderChoice): readonly JobClash[] =>
  [...groupBy(chosenIn(files, choice), ({ job }) => jobKey(job)).values()].flatMap((jobs) => {
    const [first] = jobs;
    return first === undefined || jobs.length < 2
      ? []
      : [{ job: first.job, files: jobs.map(({ file }) => file) }];
  });

/**
 * The names to order by: each with its workbook. One that several have and nobody decided about is
 * named alone, and so is left out with a finding.
 */
export function wantedJobs(files: readonly JobsFile[], choice: OrderChoice): readonly string[] {
  const undecided = new Set(
    jobClashes(files, choice)
      .map(({ job }) => jobKey(job))
      .filter((key) => !choice.twoJobs.has(key)),
  );
  const named = chosenIn(files, choice).map(({ file, job }) =>
    undecided.has(jobKey(job)) ? job : `${file}:${job}`,
  );
  return [...new Set(named)];
}

/** What the workbooks say differently about the chosen jobs, decided or not. */
export function openDifferences(
  files: readonly JobsFile[],
  choice: OrderChoice,
): readonly Finding[] {
  if (files.length < 2) return [];
  const chosen = chooseJobs(files, wantedJobs(files, { ...choice, twoJobs: everyClash(files) }));
  const nothing: Deciding = { kitBooksDecided: false, itemsDecided: false };
  return chosen.ok ? differences(files, chosen.value.chosen, nothing) : [];
}

const everyClash = (files: readonly JobsFile[]): ReadonlySet<string> =>
  new Set(files.flatMap(({ takeOff }) => takeOff.estimate.jobs.map(({ job }) => jobKey(job))));

/** A decision for a workbook that is no longer there is none. */
export const decidedBy = (
  { kitBook, items }: OrderChoice,
  files: readonly JobsFile[],
): Deciding => ({
  kitBooksDecided: isDecided(kitBook, files),
  itemsDecided: isDecided(items, files),
});

const isDecided = (holds: Holds, files: readonly JobsFile[]): boolean =>
  holds !== null && (holds.kind === "own" || files.some(({ file }) => file === holds.file));

/** The kit book and items that the person decided for all workbooks. */
export function othersFor(
  { kitBook, items }: OrderChoice,
  files: readonly JobsFile[],
): OtherInputs {
  const inputsOf = (holds: Holds): JobsFile["takeOff"]["inputs"] | undefined =>
    holds?.kind === "of"
      ? files.find(({ file }) => file === holds.file)?.takeOff.inputs
      : undefined;
  const book = inputsOf(kitBook)?.kitBook;
  const rows = inputsOf(items)?.items;
  return {
    ...(book === undefined ? {} : { kitBook: { rows: book, edition: 1, findings: [] } }),
    ...(rows === undefined ? {} : { items: rows }),
  };
}
