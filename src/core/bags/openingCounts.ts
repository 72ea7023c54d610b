/** The counts of a job put back together by opening: the very counts that its lines add up. */
import { finish, type Steps } from "../base/steps";
import { pieces, type Inches } from "../base/units";
import type { Opening } from "../openings/opening";
import { stepOf } from "../takeoff/explain";
import { countsIn, openingAt, type Count, type Take } from "../takeoff/take";
import type { JobTakeOff } from "../takeoff/takeOff";

/** One count of an opening, with what is counted. */
export type CountedPiece = {
  readonly count: Count;
  readonly item: string;
  /** Inches: none, a cut length, or width and height. */
  readonly size: readonly Inches[];
  /** In the order of work; `null` comes after all steps. */
  readonly step: number | null;
};

export type OpeningCounts = {
  readonly opening: Opening;
  /** Where its sizes are: `take.openings[row]` is the opening. */
  readonly take: Take;
  readonly row: number;
  /** For one of those alike, in the order of the kit book's rows. Never empty. */
  readonly pieces: readonly CountedPiece[];
};

/**
 * The counts of every opening that needs a part, in the schedule's order. An opening that was not
 * counted, or that needs nothing, is not among them.
 */
export const openingCounts = (takeOff: JobTakeOff): readonly OpeningCounts[] =>
  finish(openingCountsSteps(takeOff));

/** Counts of one step. */
const slice = 5_000;

/** The same, some thousand counts a step. */
export function* openingCountsSteps({
  openings,
  lines,
}: JobTakeOff): Steps<readonly OpeningCounts[]> {
  type Draft = { readonly take: Take; readonly row: number; readonly pieces: CountedPiece[] };
  const drafts = new Map<Opening, Draft>();
  let done = 0;
  for (const [index, { item, size, counts }] of lines.entries()) {
    for (const count of countsIn(counts)) {
      done += 1;
      if (done % slice === 0) yield index / lines.length;
      const { take, row } = count;
      const opening = openingAt(take, row);
      const draft: Draft = drafts.get(opening) ?? { take, row, pieces: [] };
      drafts.set(opening, draft);
      draft.pieces.push({ count, item, size, step: stepOf(count) });
    }
  }
  return openings.flatMap((opening): OpeningCounts[] => {
    const draft = drafts.get(opening);
    if (draft === undefined) return [];
    return [{ opening, ...draft, pieces: draft.pieces.sort(byBookRow) }];
  });
}

/**
 * The counts of one opening, without those of the others; `null` where it needs no part or was not
 * counted.
 */
export function countsOfOpening(
  { lines }: Pick<JobTakeOff, "lines">,
  opening: Opening,
): OpeningCounts | null {
  const rowIn = new Map<Take, number>();
  const counted: CountedPiece[] = [];
  let at: Pick<OpeningCounts, "take" | "row"> | null = null;
  for (const { item, size, counts } of lines) {
    for (const { take, part, rows, each } of counts) {
      const row = rowIn.get(take) ?? take.openings.indexOf(opening);
      rowIn.set(take, row);
      const index = row < 0 ? -1 : rows.indexOf(row);
      if (index < 0) continue;
      at ??= { take, row };
      const of = pieces(typeof each === "number" ? each : (each[index] ?? 0));
      const count: Count = { take, row, part, each: of };
      counted.push({ count, item, size, step: stepOf(count) });
    }
  }
  return at === null ? null : { opening, ...at, pieces: counted.sort(byBookRow) };
}

const byBookRow = (one: CountedPiece, other: CountedPiece): number =>
  one.count.part.source.number - other.count.part.source.number;
