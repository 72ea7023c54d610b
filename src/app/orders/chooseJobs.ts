/** Which jobs of which workbooks an order is for. */
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import { err, ok, type Result } from "../../core/base/result";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { jobKey } from "../../core/takeoff/takeOff";
import type { CountedFile } from "./countFile";

/** What choosing needs of a workbook. */
export type JobsFile = Pick<CountedFile, "file" | "takeOff">;

/** A job of a workbook. */
export type ChosenJob<File extends JobsFile = CountedFile> = {
  readonly file: File;
  readonly estimate: JobEstimate;
  /** Its name on the order: with its workbook where another chosen job has the same. */
  readonly name: string;
};

export const choiceFindings = {
  "job-in-two-files": {
    level: "stop",
    says: "{found} is a job of {files}: it is not ordered, for it may be two jobs or one that was copied.",
    todo: "Choose one of them, or both, as FILE:JOB.",
  },
} as const satisfies FindingTable;

type Choice<File extends JobsFile> = {
  readonly chosen: readonly ChosenJob<File>[];
  readonly findings: readonly Finding[];
};
type Candidate<File extends JobsFile> = Omit<ChosenJob<File>, "name">;

/**
 * The jobs that `wanted` names, by name or as `FILE:JOB`; all where it is `null`. A bare name that
 * several workbooks have chooses none of them and is a finding. Error: a name that no workbook has.
 */
export function chooseJobs<File extends JobsFile>(
  files: readonly File[],
  wanted: readonly string[] | null,
): Result<Choice<File>, string> {
  const all = files.flatMap((file) =>
    file.takeOff.estimate.jobs.map((estimate): Candidate<File> => ({ file, estimate })),
  );
  const picked = new Set<Candidate<File>>();
  const clashing = new Map<string, readonly Candidate<File>[]>();
  const names = wanted ?? [...new Set(all.map(({ estimate }) => estimate.job))];
  for (const name of names) {
    const outright = all.filter(
      ({ file, estimate }) => jobKey(`${file.file}:${estimate.job}`) === jobKey(name),
    );
    const byName = all.filter(({ estimate }) => jobKey(estimate.job) === jobKey(name));
    const fitting = outright.length > 0 ? outright : byName;
    if (fitting.length === 0) {
      const known = all.map(({ file, estimate }) => `  ${file.file}:${estimate.job}`);
      return err([`No workbook has a job ${name}. There are:`, ...known].join("\n"));
    }
    if (fitting.length > 1) clashing.set(jobKey(name), fitting);
    else for (const each of fitting) picked.add(each);
  }
  return ok({
    chosen: all.filter((each) => picked.has(each)).map((each, _, list) => named(each, list)),
    findings: [...clashing.values()].map((jobs) =>
      makeFinding(choiceFindings, "job-in-two-files", {
        found: jobs[0]?.estimate.job ?? "",
        values: { files: jobs.map(({ file }) => file.file).join(" and of ") },
      }),
    ),
  });
}

const named = <File extends JobsFile>(
  each: Candidate<File>,
  list: readonly Candidate<File>[],
): ChosenJob<File> => {
  const { job } = each.estimate;
  const isAlone = list.every(
    (other) => other === each || jobKey(other.estimate.job) !== jobKey(job),
  );
  return { ...each, name: isAlone ? job : `${job} (${each.file.file})` };
};
