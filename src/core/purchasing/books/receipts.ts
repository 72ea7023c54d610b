/**
 * What has come of a sent order, receipt by receipt. Nothing is overwritten: how a line stands now is
 * worked out from all receipts.
 */
import { pieces, type Pieces } from "../../base/units";
import type { OrderRecord } from "./orderRecord";
import type { ReceivedLine } from "./receipt";

export type LineStand = {
  /** Pieces, all packs together. */
  readonly ordered: Pieces;
  readonly came: Pieces;
  /** Still to come. */
  readonly open: Pieces;
  /** Will not come. */
  readonly short: Pieces;
  /** Came beyond what was to come; stock. */
  readonly extra: Pieces;
};

/** By line of the order. What comes of a line after it was closed is extra. */
export const lineStands = ({
  packs,
  receipts,
}: Pick<OrderRecord, "packs" | "receipts">): readonly LineStand[] =>
  packs.map(({ count, packSize }, line) => {
    const ordered = count * packSize;
    let came = 0;
    let wanted = ordered;
    let isClosed = false;
    for (const each of receipts.flatMap(({ lines }) => lines)) {
      if (each.line !== line) continue;
      came += each.came;
      if (each.isClosed && !isClosed) wanted = Math.min(came, ordered);
      isClosed ||= each.isClosed;
    }
    return {
      ordered: pieces(ordered),
      came: pieces(came),
      open: pieces(Math.max(0, wanted - came)),
      short: pieces(ordered - wanted),
      extra: pieces(Math.max(0, came - wanted)),
    };
  });

/** A receipt of all that is still to come. */
export const allOpen = (order: Pick<OrderRecord, "packs" | "receipts">): readonly ReceivedLine[] =>
  lineStands(order).flatMap(({ open }, line) =>
    open === 0 ? [] : [{ line, came: open, isClosed: false }],
  );

export const orderStandings = [
  "draft",
  "sent",
  "part received",
  "received",
  "received short",
] as const;

/** The state of an order with what has come of it, in a word. */
export function standingWord(
  order: Pick<OrderRecord, "packs" | "receipts" | "state">,
): (typeof orderStandings)[number] {
  if (order.state === "sent") return order.receipts.length === 0 ? "sent" : "part received";
  const isShort = lineStands(order).some(({ short }) => short > 0);
  return order.state === "received" && isShort ? "received short" : order.state;
}
