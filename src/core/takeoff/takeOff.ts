/** Openings through the kit book -> one list of lines per job, with every reason kept. */
import type { Finding } from "../base/finding";
import { pieces, type Inches, type Pieces } from "../base/units";
import { openingTypeNamed, type CompiledPart, type KitBook } from "../kitbook/kitBook";
import type { Opening } from "../openings/opening";
import type { ShowLength } from "./describe";
import { pieceKey, type PartColumn, type Piece } from "./partColumn";
import { openingAt, type CountColumn, type Take } from "./take";
import { takeOffType, type TypeTakeOff } from "./takeOffType";

/** One item of a job, same item and same size together. */
export type Line = {
  readonly item: string;
  /** Inches: none, a cut length, or width and height. */
  readonly size: readonly Inches[];
  /** The sum over `counts`, each times how many openings are alike. */
  readonly quantity: Pieces;
  /** Why, as columns by part; `countsIn` lists them one by one. Never empty. */
  readonly counts: readonly CountColumn[];
};

export type JobTakeOff = {
  readonly job: string;
  /** Every checked opening of the job, counted or not, in the schedule's order. */
  readonly openings: readonly Opening[];
  /** Those that gave no count. */
  readonly stopped: readonly Opening[];
  /** In the order in which the kit book first needs them. */
  readonly lines: readonly Line[];
};

export type TakeOff = {
  /** In the order of their first opening. */
  readonly jobs: readonly JobTakeOff[];
  /** One per opening type that the openings use. */
  readonly takes: readonly Take[];
  readonly findings: readonly Finding[];
};

/**
 * Takes off checked openings, whose types the book has.
 *
 * The sum of a line's counts is its quantity; the order of the openings changes no quantity.
 * @throws RangeError when an opening's type is not in the book.
 */
export function takeOff(book: KitBook, openings: readonly Opening[], show: ShowLength): TakeOff {
  const remembered = remember(show);
  const jobs = new Map<string, JobDraft>();
  const jobOf = new Map<Opening, JobDraft>();
  for (const opening of openings) {
    const key = jobKey(opening.job);
    const job: JobDraft = jobs.get(key) ?? {
      job: opening.job,
      openings: [],
      stopped: [],
      lines: new Map(),
    };
    job.openings.push(opening);
    jobs.set(key, job);
    jobOf.set(opening, job);
  }

  const takes: Take[] = [];
  const findings: Finding[] = [];
  for (const [name, ofType] of byType(openings)) {
    const type = openingTypeNamed(book, name);
    if (type === undefined) throw new RangeError(`The kit book has no opening type ${name}`);
    const result = takeOffType(book, type, ofType, remembered);
    const jobOfRow = ofType.map((opening) => jobOf.get(opening));
    takes.push(result.take);
    for (const finding of result.findings) findings.push(finding);
    for (const row of result.stopped) jobOfRow[row]?.stopped.push(openingAt(result.take, row));
    for (const column of result.columns) addColumn(result, column, jobOfRow);
  }
  return { jobs: [...jobs.values()].map(finishJob), takes, findings };
}

/** A writer of lengths that writes each length once: a schedule has few different ones. */
function remember(show: ShowLength): ShowLength {
  const written = new Map<Inches, string>();
  return (length) => {
    const known = written.get(length) ?? show(length);
    written.set(length, known);
    return known;
  };
}

/** Jobs are the same job in any case and with spaces doubled. */
export const jobKey = (job: string): string => job.trim().replace(/\s+/g, " ").toLowerCase();

type CountDraft = { readonly rows: number[]; readonly each: number[] };
type LineDraft = {
  readonly item: string;
  readonly size: readonly Inches[];
  quantity: number;
  readonly counts: (CountDraft & Pick<CountColumn, "take" | "part">)[];
};
type JobDraft = {
  readonly job: string;
  readonly openings: Opening[];
  readonly stopped: Opening[];
  readonly lines: Map<string, LineDraft>;
};

function byType(openings: readonly Opening[]): ReadonlyMap<string, readonly Opening[]> {
  const groups = new Map<string, Opening[]>();
  for (const opening of openings) {
    const group = groups.get(opening.type);
    if (group === undefined) groups.set(opening.type, [opening]);
    else group.push(opening);
  }
  return groups;
}

type Draft = { readonly line: LineDraft; readonly counts: CountDraft };
type Drafts = Map<JobDraft, Draft>;

function newDraft(line: LineDraft, take: Take, part: CompiledPart): Draft {
  const counts = { take, part, rows: [], each: [] };
  line.counts.push(counts);
  return { line, counts };
}

/** Adds the counts of one part to the lines of the jobs. */
function addColumn(
  { take, stopped }: TypeTakeOff,
  { part, quantities, pieces: found }: PartColumn,
  jobOfRow: readonly (JobDraft | undefined)[],
): void {
  // A piece is one object for all rows that need it, so that its line is looked up once a job.
  const drafts = new Map<Piece, Drafts>();
  for (let row = 0; row < quantities.length; row += 1) {
    const each = quantities[row] ?? 0;
    const piece = found[row];
    const job = jobOfRow[row];
    if (each === 0 || piece === undefined || job === undefined || stopped.has(row)) continue;
    const byJob: Drafts = drafts.get(piece) ?? new Map<JobDraft, Draft>();
    const draft = byJob.get(job) ?? newDraft(lineFor(job, piece), take, part);
    if (byJob.size === 0) drafts.set(piece, byJob);
    byJob.set(job, draft);
    draft.counts.rows.push(row);
    draft.counts.each.push(each);
    draft.line.quantity += each * openingAt(take, row).quantity;
  }
}

function lineFor(job: JobDraft, { item, size }: Piece): LineDraft {
  const key = pieceKey(item, size);
  const line = job.lines.get(key) ?? { item, size, quantity: 0, counts: [] };
  job.lines.set(key, line);
  return line;
}

const finishJob = (draft: JobDraft): JobTakeOff => ({
  job: draft.job,
  openings: draft.openings,
  stopped: draft.stopped,
  lines: [...draft.lines.values()].map(({ item, size, quantity, counts }) => ({
    item,
    size,
    quantity: pieces(quantity),
    counts,
  })),
});
