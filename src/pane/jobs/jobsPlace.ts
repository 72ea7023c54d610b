/** Where a person is among the jobs: at all of them, at the lines of one, at a line's reasons, at an opening. */

export type JobsPlace = {
  /** The `jobKey` of the job whose lines are shown; `null` for all jobs. */
  readonly job: string | null;
  /** The `lineKey` of the line whose reasons are shown; `null` for all lines. */
  readonly line: string | null;
  /** The key (`openingKeys`) of the opening that is shown, over its job or over a line. */
  readonly opening: string | null;
  /** What is searched for in the lines of the job. */
  readonly search: string;
  /** What was left last, for the focus to return to. */
  readonly left: string | null;
};

export const allJobs: JobsPlace = { job: null, line: null, opening: null, search: "", left: null };

export const openJob = (job: string): JobsPlace => ({ ...allJobs, job });

export const openLine = (place: JobsPlace, line: string): JobsPlace => ({
  ...place,
  line,
  left: null,
});

export const openOpening = (place: JobsPlace, opening: string): JobsPlace => ({
  ...place,
  opening,
  left: null,
});

/** One step out again. */
export function back(place: JobsPlace): JobsPlace {
  const { job, line, opening } = place;
  if (opening !== null) return { ...place, opening: null, left: opening };
  if (line !== null) return { ...place, line: null, left: line };
  return { ...allJobs, left: job };
}
