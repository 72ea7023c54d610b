/**
 * Each opening's bags in the order of work, and what is in them.
 *
 * A bag's place is that of the first step that needs it, so an order of work that differs from one
 * opening to the next (the jamb first, or after the leaf) puts the bags in another order too.
 * Together the bags hold what the job's lines count: nothing more and nothing less.
 */
import { pieces, type Inches, type Pieces } from "../base/units";
import type { Opening } from "../openings/opening";
import { pieceKey } from "../takeoff/partColumn";
import type { JobTakeOff } from "../takeoff/takeOff";
import { openingCounts, type CountedPiece, type OpeningCounts } from "./openingCounts";

/** One item of a bag, same item and same size together. */
export type BagContent = {
  readonly item: string;
  /** Inches: none, a cut length, or width and height. */
  readonly size: readonly Inches[];
  /** For one of the openings alike. */
  readonly pieces: Pieces;
};

export type Bag = {
  readonly name: string;
  /** The first step that needs it; `null` where the kit book gives none. */
  readonly step: number | null;
  /** Bag `number` of `of` of its opening, from 1. */
  readonly number: number;
  readonly of: number;
  /** In the order of work. Never empty. */
  readonly contents: readonly BagContent[];
  /** The sum over `contents`. */
  readonly pieces: Pieces;
};

export type PackedOpening = OpeningCounts & {
  /** In the order of work. */
  readonly bags: readonly Bag[];
};

export type JobBags = {
  readonly job: string;
  /** In the schedule's order. */
  readonly openings: readonly PackedOpening[];
  /** Counted openings that need no part at all. */
  readonly empty: readonly Opening[];
};

/** The bags of every counted opening of a job. */
export function packJob(job: JobTakeOff): JobBags {
  const openings = openingCounts(job).map(packOpening);
  const packed = new Set([...openings.map(({ opening }) => opening), ...job.stopped]);
  return {
    job: job.job,
    openings,
    empty: job.openings.filter((opening) => !packed.has(opening)),
  };
}

/** The bags of one opening. */
export const packOpening = (counts: OpeningCounts): PackedOpening => ({
  ...counts,
  bags: bagsOf(counts.pieces),
});

/** One bag of one copy: what a label is for. */
export type BagCopy = {
  readonly opening: PackedOpening;
  /** Copy `copy` of `of` openings alike, from 1. */
  readonly copy: number;
  readonly of: number;
  readonly bag: Bag;
};

/** Every bag of a job, copy by copy, each in its order of work. */
export function* bagCopies({ openings }: Pick<JobBags, "openings">): Generator<BagCopy, void> {
  for (const opening of openings) {
    const of = opening.opening.quantity;
    for (let copy = 1; copy <= of; copy += 1) {
      for (const bag of opening.bags) yield { opening, copy, of, bag };
    }
  }
}

type BagDraft = {
  readonly name: string;
  readonly contents: Map<string, BagContent & { step: number | null }>;
};

function bagsOf(counted: readonly CountedPiece[]): readonly Bag[] {
  const drafts = new Map<string, BagDraft>();
  for (const { count, item, size, step } of [...counted].sort(byStep)) {
    const name = count.part.bag.trim().replace(/\s+/g, " ");
    const draft: BagDraft = drafts.get(name.toLowerCase()) ?? { name, contents: new Map() };
    drafts.set(name.toLowerCase(), draft);
    const key = pieceKey(item, size);
    const before = draft.contents.get(key);
    draft.contents.set(key, {
      item,
      size,
      step: before === undefined ? step : before.step,
      pieces: pieces((before?.pieces ?? 0) + count.each),
    });
  }
  return [...drafts.values()].map(({ name, contents }, index): Bag => {
    const inOrder = [...contents.values()];
    return {
      name,
      step: inOrder[0]?.step ?? null,
      number: index + 1,
      of: drafts.size,
      contents: inOrder.map(({ item, size, pieces: each }) => ({ item, size, pieces: each })),
      pieces: pieces(inOrder.reduce((sum, content) => sum + content.pieces, 0)),
    };
  });
}

/** Steps in order and what has none behind them; within a step the kit book's order stays. */
const byStep = (one: CountedPiece, other: CountedPiece): number =>
  (one.step ?? Infinity) === (other.step ?? Infinity)
    ? 0
    : (one.step ?? Infinity) - (other.step ?? Infinity);
