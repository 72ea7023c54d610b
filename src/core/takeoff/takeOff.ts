/** Openings through the kit book -> one list of lines per job, with every reason kept. */
import type { Finding } from "../base/finding";
import { pieces, type Inches, type Pieces } from "../base/units";
import { openingTypeNamed, type KitBook } from "../kitbook/kitBook";
import type { Opening } from "../openings/opening";
import type { ShowLength } from "./describe";
import { openingAt, type Count, type Take } from "./take";
import { takeOffType } from "./takeOffType";

/** One item of a job, same item and same size together. */
export type Line = {
  readonly item: string;
  /** Inches: none, a cut length, or width and height. */
  readonly size: readonly Inches[];
  /** The sum of `counts`. */
  readonly quantity: Pieces;
  /** Never empty. */
  readonly counts: readonly Count[];
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
    const result = takeOffType(book, type, ofType, show, (count, item, size) => {
      const opening = openingAt(count.take, count.row);
      const job = jobOf.get(opening);
      if (job !== undefined) addCount(job.lines, count, count.each * opening.quantity, item, size);
    });
    takes.push(result.take);
    findings.push(...result.findings);
    for (const row of result.stopped) {
      const opening = openingAt(result.take, row);
      jobOf.get(opening)?.stopped.push(opening);
    }
  }
  return { jobs: [...jobs.values()].map(finishJob), takes, findings };
}

/** Jobs are the same job in any case and with spaces doubled. */
export const jobKey = (job: string): string => job.trim().replace(/\s+/g, " ").toLowerCase();

type LineDraft = { item: string; size: readonly Inches[]; quantity: number; counts: Count[] };
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

function addCount(
  lines: Map<string, LineDraft>,
  count: Count,
  quantity: number,
  item: string,
  size: readonly Inches[],
): void {
  const key = lineKey(item, size);
  const line = lines.get(key);
  if (line === undefined) lines.set(key, { item, size, quantity, counts: [count] });
  else {
    line.quantity += quantity;
    line.counts.push(count);
  }
}

/** What makes two counts one line: the item without case, and the size to the hundred-thousandth of an inch. */
export const lineKey = (item: string, size: readonly Inches[]): string =>
  size.length === 0
    ? item.toLowerCase()
    : `${item.toLowerCase()} ${size.map((length) => length.toFixed(5)).join(" x ")}`;

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
