/**
 * Everything that persons typed on the hardware sheets of a workbook, put to what is counted now.
 *
 * 1. Rows whose name was lost are named again by what they show.
 * 2. What stands on the sheets is put together with what is on record.
 * 3. Answers are carried out: the corrections of a job that was renamed go to its new name.
 * 4. Corrections are put to the lines of their jobs; what no line takes is kept beside them.
 */
import type { CellPlace } from "../base/cell";
import { makeFinding, type Finding } from "../base/finding";
import { jobKey, type JobTakeOff } from "../takeoff/takeOff";
import { correctJob, lineWords, type CorrectionRules, type JobCorrections } from "./correctJob";
import {
  isAddedRow,
  isLineCorrection,
  isMoveAnswer,
  type AddedRow,
  type Correction,
  type LineCorrection,
  type MoveAnswer,
  type ReadSheet,
} from "./correction";
import { correctionFindings, type CorrectionFindingCode } from "./correctionFindings";
import { guessJob } from "./guessJob";
import { mergeCorrections, type MergeDoubt } from "./merge";
import { answerMoves, promoteCopies } from "./moves";
import { nameRows } from "./nameRows";
import { noRecord, type CorrectionRecord } from "./record";
import { jobOf, rowKey, type RowName } from "./rowName";

export type CorrectionInput = {
  readonly record: CorrectionRecord;
  /** The hardware sheets as they stand; of two that differ, the first one counts. */
  readonly sheets: readonly ReadSheet[];
};

/** A workbook on which nobody typed. */
export const noCorrections: CorrectionInput = { record: noRecord, sheets: [] };

/** What was typed for a job that is not in the schedule any more. */
export type LostJob = {
  readonly job: string;
  /** Never empty. */
  readonly corrections: readonly (LineCorrection | AddedRow)[];
  /** The job that it may be called now; `null` where none is likely. */
  readonly guess: string | null;
  /** What a person answered to that question, other than yes. */
  readonly answer: MoveAnswer | null;
};

/** A finding about the row `key` (a `rowKey`), so that its cell can be told anew once sheets are written. */
export type CorrectionFinding = { readonly key: string; readonly finding: Finding };

export type Corrections = {
  /** By job, in the order in which the jobs were given. */
  readonly jobs: readonly JobCorrections[];
  readonly lost: readonly LostJob[];
  /** The sheets as they were read, with the names that were lost. */
  readonly sheets: readonly ReadSheet[];
  /** Everything that is to be kept, used or not. */
  readonly kept: readonly Correction[];
  readonly findings: readonly CorrectionFinding[];
};

/** Puts what was typed to the jobs. Total: whatever was typed is kept, and bad corrections are findings. */
export function correctJobs(
  jobs: readonly Pick<JobTakeOff, "job" | "lines">[],
  { record, sheets }: CorrectionInput,
  rules: CorrectionRules,
): Corrections {
  const names = jobs.map(({ job }) => job);
  const named = nameRows(sheets, jobs, rules.unit);
  const merged = mergeCorrections(record, named);
  const answered = answerMoves(merged.corrections, names);
  const promoted = promoteCopies(answered.corrections);
  const kept = promoted.corrections;
  const places = new Map(merged.places);
  for (const [before, name] of [...answered.renamed, ...promoted.renamed]) {
    const place = places.get(before);
    if (place !== undefined) places.set(rowKey(name), place);
  }

  const findings: CorrectionFinding[] = [];
  const report = reporter(places, findings);
  const ofJob = byJob(kept);
  const corrected = jobs.map((job) =>
    correctJob(job, ofJob.get(jobKey(job.job)) ?? [], rules, report),
  );
  for (const doubt of merged.doubts) reportMerge(doubt, kept, rules, report);
  const inSchedule = new Set(names.map(jobKey));
  const lost = [...ofJob]
    .filter(([key]) => !inSchedule.has(key))
    .flatMap(([, corrections]) => lostJob(corrections, jobs, record.jobs, kept, report));
  return { jobs: corrected, lost, sheets: named, kept, findings };
}

function byJob(corrections: readonly Correction[]): ReadonlyMap<string, readonly Correction[]> {
  const groups = new Map<string, Correction[]>();
  for (const each of corrections) {
    const key = jobKey(jobOf(each.name));
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [each]);
    else group.push(each);
  }
  return groups;
}

const reporter =
  (places: ReadonlyMap<string, CellPlace>, findings: CorrectionFinding[]) =>
  (
    code: CorrectionFindingCode,
    name: RowName,
    found: string,
    values: Readonly<Record<string, string | number>> = {},
  ): void => {
    const key = rowKey(name);
    const place = places.get(key) ?? null;
    const details = { place, found, values, job: jobOf(name) };
    findings.push({ key, finding: makeFinding(correctionFindings, code, details) });
  };

function reportMerge(
  { code, name }: MergeDoubt,
  kept: readonly Correction[],
  { showLength }: CorrectionRules,
  report: ReturnType<typeof reporter>,
): void {
  const found = kept.find((each) => rowKey(each.name) === rowKey(name));
  if (found === undefined) return;
  const { item, correction, quantity, spares, reason } = found.typed;
  const line = name.kind === "line" ? lineWords(name, showLength) : item;
  const words = correction || quantity || spares || reason;
  report(code === "put-in" ? "added-put-in" : "correction-put-back", name, words, { line });
}

/** None where only an answer is left. */
function lostJob(
  corrections: readonly Correction[],
  jobs: readonly Pick<JobTakeOff, "job" | "lines">[],
  before: readonly string[],
  kept: readonly Correction[],
  report: ReturnType<typeof reporter>,
): readonly LostJob[] {
  const typed = corrections.filter((each) => isLineCorrection(each) || isAddedRow(each));
  const [first] = typed;
  if (first === undefined) return [];
  const { job } = first.name;
  const guess = guessJob(job, typed, jobs, before);
  const answer =
    kept
      .filter(isMoveAnswer)
      .find(
        ({ name }) =>
          jobKey(name.from) === jobKey(job) && guess !== null && jobKey(name.to) === jobKey(guess),
      ) ?? null;
  const words =
    guess === null
      ? ""
      : ` It may be called ${guess} now: type yes beside that question on the hardware sheet to move them there.`;
  report("job-gone", first.name, job, { count: typed.length, guess: words });
  return [{ job, corrections: typed, guess, answer }];
}
