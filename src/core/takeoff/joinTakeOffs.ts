/** Take-offs of parts of a schedule put together, so that a part that did not change is kept. */
import type { Finding } from "../base/finding";
import { pieces, type Inches } from "../base/units";
import type { Opening } from "../openings/opening";
import { pieceKey } from "./partColumn";
import type { CountColumn, Take } from "./take";
import { jobKey, type JobTakeOff, type TakeOff } from "./takeOff";

type LineDraft = {
  readonly item: string;
  readonly size: readonly Inches[];
  readonly counts: CountColumn[];
  quantity: number;
};

type JobDraft = {
  readonly job: string;
  readonly openings: Opening[];
  readonly stopped: Opening[];
  readonly lines: Map<string, LineDraft>;
};

/**
 * One take-off that counts what the parts count, all by the same kit book. It differs from a take-off
 * of all openings at once only in the order of lines and findings, and in having several takes of a type.
 */
export function joinTakeOffs(parts: readonly TakeOff[]): TakeOff {
  const [only, ...others] = parts;
  if (only !== undefined && others.length === 0) return only;
  const jobs = new Map<string, JobDraft>();
  const takes: Take[] = [];
  const findings: Finding[] = [];
  for (const part of parts) {
    takes.push(...part.takes);
    for (const finding of part.findings) findings.push(finding);
    for (const job of part.jobs) addJob(jobs, job);
  }
  return { jobs: [...jobs.values()].map(finishJob), takes, findings };
}

function addJob(jobs: Map<string, JobDraft>, { job, openings, stopped, lines }: JobTakeOff): void {
  const key = jobKey(job);
  const draft: JobDraft = jobs.get(key) ?? { job, openings: [], stopped: [], lines: new Map() };
  jobs.set(key, draft);
  for (const opening of openings) draft.openings.push(opening);
  for (const opening of stopped) draft.stopped.push(opening);
  for (const { item, size, counts, quantity } of lines) {
    const piece = pieceKey(item, size);
    const line = draft.lines.get(piece) ?? { item, size, counts: [], quantity: 0 };
    draft.lines.set(piece, line);
    for (const column of counts) line.counts.push(column);
    line.quantity += quantity;
  }
}

const finishJob = ({ lines, ...job }: JobDraft): JobTakeOff => ({
  ...job,
  lines: [...lines.values()].map((line) => ({ ...line, quantity: pieces(line.quantity) })),
});
