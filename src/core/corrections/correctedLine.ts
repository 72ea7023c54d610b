/** A line with what a person typed about it: what is priced, ordered and packed. */
import { countsIn, openingAt } from "../takeoff/take";
import { quantityOf } from "../takeoff/explain";
import { shareWhole } from "../base/shareWhole";
import { pieces, type Pieces } from "../base/units";
import type { Line } from "../takeoff/takeOff";
import { writeChange, type Change } from "./change";
import type { AddedRow, LineCorrection } from "./correction";

/** `quantity` is what stands after the correction, and `counts` add up to `counted`. */
export type CorrectedLine = Line & {
  /** What the kit book counts; none for a line that was added by hand. */
  readonly counted: Pieces;
  /** What a person typed about it, of use or not; `null` for nothing. */
  readonly typed: LineCorrection | AddedRow | null;
  /** What was made of it; `null` where the quantity is as counted. */
  readonly change: Change | null;
  /** Spares as typed; `null` where they go by the item's rule. */
  readonly ownSpares: Pieces | null;
};

/** A line as it is counted, with nothing typed about it. */
export const asCounted = (line: Line): CorrectedLine => ({
  ...line,
  counted: line.quantity,
  typed: null,
  change: null,
  ownSpares: null,
});

/** Whether a person added the line; such a line has no counts. */
export const isAdded = ({ typed }: Pick<CorrectedLine, "typed">): boolean =>
  typed?.name.kind === "added";

/** `+3 by AB: two were bent`: what was typed, for reasons and notes; the empty text for nothing. */
export function correctionWords({ typed, change }: CorrectedLine): string {
  if (typed === null) return "";
  const { quantity, correction, reason, by } = typed.typed;
  const asUsed = change === null ? correction : writeChange(change);
  const what = isAdded({ typed }) ? `${quantity} added by hand` : asUsed || "spares typed";
  const whose = by === "" ? "" : ` by ${by}`;
  const unused = change === null && correction !== "" ? " (not used)" : "";
  return `${what}${unused}${whose}${reason === "" ? "" : `: ${reason}`}`;
}

export type MarkQuantity = { readonly mark: string; readonly quantity: Pieces };

/**
 * The line's quantity by mark. More than is counted goes to no mark (the empty text); what is taken
 * away is taken from the marks in proportion to what they count. Adds up to `quantity`.
 */
export function quantityByMark(line: CorrectedLine): readonly MarkQuantity[] {
  const byMark = new Map<string, number>();
  for (const count of countsIn(line.counts)) {
    const { mark } = openingAt(count.take, count.row);
    byMark.set(mark, (byMark.get(mark) ?? 0) + quantityOf(count));
  }
  const marks = [...byMark.keys()];
  const counts = [...byMark.values()];
  const more = line.quantity - line.counted;
  const shares = more >= 0 ? counts : shareWhole(line.quantity, counts, marks);
  const given = marks.map((mark, index) => ({ mark, quantity: pieces(shares[index] ?? 0) }));
  return more > 0 ? [...given, { mark: "", quantity: pieces(more) }] : given;
}
