/** What is already ordered, received or shipped, held against what is needed now. */
import { pieces, type Inches, type Pieces } from "../base/units";
import type { Standing } from "../purchasing/orders/orderInput";
import type { JobPieces } from "../purchasing/sizedPieces";
import { pieceKey } from "../takeoff/partColumn";
import { jobKey } from "../takeoff/takeOff";
import type { Count } from "./issue";

/** What sent orders and the shelf give to a job, and what of it has come and may be on the site. */
export type OrderedPieces = {
  readonly job: string;
  readonly item: string;
  readonly size: readonly Inches[];
  readonly ordered: Pieces;
  readonly come: Pieces;
};

/** What the firm's order books say of each job. */
export const orderedOf = ({
  supplied,
  orderedForJobs,
}: Pick<Standing, "supplied" | "orderedForJobs">): readonly OrderedPieces[] => [
  ...supplied.map((each) => ({ ...sized(each), ordered: each.pieces, come: each.pieces })),
  ...orderedForJobs.map((each) => ({ ...sized(each), ordered: each.pieces, come: pieces(0) })),
];

const sized = ({ job, item, size }: JobPieces): Pick<OrderedPieces, "job" | "item" | "size"> => ({
  job,
  item,
  size,
});

export type OrderedLine = OrderedPieces & {
  /** What the job needs now, with spares. */
  readonly needed: number;
  readonly stillToOrder: number;
  /** Ordered and not needed any more. */
  readonly tooMany: number;
};

/**
 * Every line of which something is ordered, also where the job does not need it any more, in the
 * order given. Pieces of the same job, item and size add up.
 */
export function againstOrders(
  { lines }: Count,
  ordered: readonly OrderedPieces[],
): readonly OrderedLine[] {
  const keyOf = ({ job, item, size }: Pick<OrderedPieces, "job" | "item" | "size">): string =>
    `${jobKey(job)}\n${pieceKey(item.trim(), size)}`;
  const needed = new Map(lines.map((line) => [keyOf(line), line.quantity + line.spares]));
  const together = new Map<string, OrderedPieces>();
  for (const each of ordered) {
    const before = together.get(keyOf(each));
    together.set(keyOf(each), before === undefined ? each : added(before, each));
  }
  return [...together].map(([key, each]) => {
    const count = needed.get(key) ?? 0;
    return {
      ...each,
      needed: count,
      stillToOrder: Math.max(0, count - each.ordered),
      tooMany: Math.max(0, each.ordered - count),
    };
  });
}

const added = (one: OrderedPieces, other: OrderedPieces): OrderedPieces => ({
  ...one,
  ordered: pieces(one.ordered + other.ordered),
  come: pieces(one.come + other.come),
});
