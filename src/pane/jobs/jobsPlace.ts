/** Where a person is among the jobs: at all of them, at the lines of one, at the reasons of a line. */

export type JobsPlace = {
  /** The `jobKey` of the job whose lines are shown; `null` for all jobs. */
  readonly job: string | null;
  /** The `pieceKey` of the line whose reasons are shown; `null` for all lines. */
  readonly line: string | null;
  /** What was left last, for the focus to return to. */
  readonly left: string | null;
};

export const allJobs: JobsPlace = { job: null, line: null, left: null };

export const openJob = (job: string): JobsPlace => ({ job, line: null, left: null });

export const openLine = (place: JobsPlace, line: string): JobsPlace => ({
  ...place,
  line,
  left: null,
});

/** One step out again. */
export const back = ({ job, line }: JobsPlace): JobsPlace =>
  line === null ? { ...allJobs, left: job } : { job, line: null, left: line };
