/** Openings through the kit book -> one list of lines per job, with every reason kept. */
import type { Finding } from "../base/finding";
import { pieces, type Inches, type Pieces } from "../base/units";
import { openingTypeNamed, type KitBook } from "../kitbook/kitBook";
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
    const groups = groupRows(result, jobOfRow);
    takes.push(result.take);
    for (const finding of result.findings) findings.push(finding);
    for (const row of result.stopped) jobOfRow[row]?.stopped.push(openingAt(result.take, row));
    for (const column of result.columns) addColumn(result.take, column, groups);
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

type LineDraft = {
  readonly item: string;
  readonly size: readonly Inches[];
  quantity: number;
  readonly counts: CountColumn[];
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

/** The rows of a take that are counted for one job, and how many alike they stand for in all. */
type RowGroup = { readonly job: JobDraft; readonly rows: number[]; alike: number };

function groupRows(
  { take, stopped }: TypeTakeOff,
  jobOfRow: readonly (JobDraft | undefined)[],
): readonly RowGroup[] {
  const groups = new Map<JobDraft, RowGroup>();
  for (const [row, job] of jobOfRow.entries()) {
    if (job === undefined || stopped.has(row)) continue;
    const group = groups.get(job) ?? { job, rows: [], alike: 0 };
    group.rows.push(row);
    group.alike += openingAt(take, row).quantity;
    groups.set(job, group);
  }
  return [...groups.values()];
}

/** Adds the counts of one part to the lines of the jobs. */
function addColumn(take: Take, column: PartColumn, groups: readonly RowGroup[]): void {
  const { part, each, piece } = column;
  for (const { job, rows, alike } of groups) {
    if (typeof each === "number" && "item" in piece) {
      if (each === 0) continue;
      const line = lineFor(job, piece);
      line.counts.push({ take, part, rows, each });
      line.quantity += each * alike;
    } else {
      addRows(take, column, job, rows);
    }
  }
}

function addRows(
  take: Take,
  { part, each, piece }: PartColumn,
  job: JobDraft,
  rows: readonly number[],
): void {
  type Counts = { readonly line: LineDraft; readonly rows: number[]; readonly each: number[] };
  // A piece is one object for all rows that need it, and neighbours often need the same.
  const known = new Map<Piece, Counts>();
  let last: Piece | null = null;
  let counts: Counts | undefined;
  for (const row of rows) {
    const quantity = typeof each === "number" ? each : (each[row] ?? 0);
    const needed = "item" in piece ? piece : piece[row];
    if (quantity === 0 || needed === undefined) continue;
    if (needed !== last || counts === undefined) {
      last = needed;
      counts = known.get(needed);
      if (counts === undefined) {
        counts = { line: lineFor(job, needed), rows: [], each: [] };
        counts.line.counts.push({ take, part, rows: counts.rows, each: counts.each });
        known.set(needed, counts);
      }
    }
    counts.rows.push(row);
    counts.each.push(quantity);
    counts.line.quantity += quantity * openingAt(take, row).quantity;
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
