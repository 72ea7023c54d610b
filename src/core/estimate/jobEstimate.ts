/** One job of an estimate: its count, what was typed of it, and what its lines cost and weigh. */
import type { Finding } from "../base/finding";
import type { JobCorrections } from "../corrections/correctJob";
import { typeKey, type KitBook } from "../kitbook/kitBook";
import type { Opening, UncountedRow } from "../openings/opening";
import type { Items } from "../pricing/item";
import { priceMaterial, type Material } from "../pricing/material";
import type { JobLoads } from "../pricing/loads/openingLoads";
import { jobKey, type JobTakeOff } from "../takeoff/takeOff";

export type JobEstimate = {
  readonly job: string;
  /** Rows of the schedule that are openings of this job, counted or not. */
  readonly rows: number;
  /** Rows that gave no count, from the schedule's reading and from the kit book. */
  readonly uncounted: readonly UncountedRow[];
  /** Counted, but by a kit book that has bad rows for them. */
  readonly partly: readonly PartlyCounted[];
  /** What is counted, before corrections. */
  readonly takeOff: JobTakeOff;
  /** Those of all openings, the stopped ones too; `null` where no capacity is entered. */
  readonly loads: JobLoads | null;
  readonly corrections: JobCorrections;
  /** Of the lines after corrections. */
  readonly material: Material;
};

/** Openings of a type of which the kit book has rows that do not work: some of their hardware may be missing. */
export type PartlyCounted = {
  readonly type: string;
  readonly badRows: number;
  readonly openings: readonly Opening[];
};

/** A job's count with the rows of the schedule that could not be read. */
export type JobParts = {
  readonly job: string;
  readonly takeOff: JobTakeOff;
  readonly uncounted: readonly UncountedRow[];
};

export type JobBasis = {
  readonly book: KitBook;
  readonly items: Items;
  /** By `openingKey`: what is wrong with each opening. */
  readonly aboutOpening: ReadonlyMap<string, readonly Finding[]>;
};

/** `corrected` is what its corrections make of the count. */
export function jobEstimate(
  part: JobParts & Pick<JobEstimate, "loads"> & { readonly corrected: JobCorrections },
  { book, items, aboutOpening }: JobBasis,
): JobEstimate {
  const { job, takeOff, uncounted, loads, corrected } = part;
  return {
    job,
    rows: takeOff.openings.length + uncounted.length,
    uncounted: [...uncounted, ...stoppedRows(takeOff, aboutOpening)].sort(
      (a, b) => a.place.row - b.place.row,
    ),
    partly: partlyCounted(takeOff, book),
    takeOff,
    loads,
    corrections: corrected,
    material: priceMaterial(corrected.lines, items),
  };
}

function partlyCounted(
  { openings, stopped }: JobTakeOff,
  { types }: KitBook,
): readonly PartlyCounted[] {
  const bad = new Map(
    types.flatMap(({ name, broken }) => (broken.length === 0 ? [] : [[typeKey(name), broken]])),
  );
  if (bad.size === 0) return [];
  const isStopped = new Set(stopped);
  const byType = new Map<string, Opening[]>();
  for (const opening of openings) {
    if (isStopped.has(opening) || !bad.has(typeKey(opening.type))) continue;
    const alike = byType.get(opening.type) ?? [];
    alike.push(opening);
    byType.set(opening.type, alike);
  }
  return [...byType].map(([type, ofType]) => ({
    type,
    badRows: bad.get(typeKey(type))?.length ?? 0,
    openings: ofType,
  }));
}

const openingKey = (job = "", mark = ""): string => `${jobKey(job)}\n${mark}`;

export function findingsByOpening(
  findings: readonly Finding[],
): ReadonlyMap<string, readonly Finding[]> {
  const byOpening = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = openingKey(finding.job, finding.mark);
    const group = byOpening.get(key);
    if (group === undefined) byOpening.set(key, [finding]);
    else group.push(finding);
  }
  return byOpening;
}

const stoppedRows = (
  { stopped }: JobTakeOff,
  findings: ReadonlyMap<string, readonly Finding[]>,
): readonly UncountedRow[] =>
  stopped.map(({ place, job, mark }) => ({
    place,
    job,
    mark,
    findings: findings.get(openingKey(job, mark)) ?? [],
  }));
