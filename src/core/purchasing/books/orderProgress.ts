/**
 * What an order has given by now, what it will still give, and what it will not give any more since
 * lines were closed short.
 *
 * Of what comes of a line, the jobs have theirs first and stock the rest; of jobs, those with the
 * earliest need-by date first. Bars are cut in the order of the cut list. So a further receipt never
 * takes from a job what an earlier one gave it.
 */
import { cents, pieces } from "../../base/units";
import { times } from "./cutGoods";
import { addJobPieces, orderGoods, type Goods } from "./orderGoods";
import type { OrderedPacks, OrderRecord, TakenPieces } from "./orderRecord";
import { lineStands, type LineStand } from "./receipts";
import { shareCost } from "../orders/shares";
import { sizedKey } from "../sizedItem";
import { addUp, jobKeyOf, lessPieces, type JobPieces, type SizedPieces } from "../sizedPieces";

export type OrderProgress = {
  /** By line. */
  readonly lines: readonly LineStand[];
  /** By line, pieces that have gone to the jobs. */
  readonly used: readonly number[];
  /** What the jobs have of it. What it takes off the shelf counts with the last of the order. */
  readonly given: readonly JobPieces[];
  readonly toGive: readonly JobPieces[];
  /** Cut and kept by now. */
  readonly offcuts: readonly SizedPieces[];
  /** Still to come for stock. */
  readonly toStock: readonly SizedPieces[];
};

/** `owed`: promises to the order that are still open; what they are for is not there yet. */
export function progressOf(order: OrderRecord, owed: readonly TakenPieces[] = []): OrderProgress {
  const lines = lineStands(order);
  const used = lines.map((line, at) => Math.min(line.came, forJobs(order, line, at)));
  const effect = inEffect(order);
  const isDone = order.state === "received";
  const reached = withoutPromises(order, owed);
  const { gives, offcuts } = isDone
    ? { gives: reached.covers, offcuts: reached.offcuts }
    : orderGoods(order, used);
  const open = order.packs.map(({ item, size }, at): SizedPieces => {
    const line = lines[at];
    const count = line === undefined ? 0 : line.open - (forJobs(order, line, at) - (used[at] ?? 0));
    return { item, size, pieces: pieces(count) };
  });
  return {
    lines,
    used,
    given: gives,
    toGive: lessPieces(effect.covers, gives, keyOfJob),
    offcuts,
    toStock: addUp([...open, ...lessPieces(effect.offcuts, offcuts, sizedKey)]),
  };
}

/**
 * The order without what was closed short and without what it was promised and will not get: what its
 * jobs have of it in the end, and what that costs. What a supplier adds to the goods stays.
 */
export function inEffect(order: OrderRecord): OrderRecord {
  const lines = lineStands(order);
  if (lines.every(({ short }) => short === 0) && order.givenUp.length === 0) return order;
  const whole = orderGoods(
    order,
    order.packs.map((_, at) => jobsPart(order, at)),
  );
  const left = orderGoods(
    order,
    lines.map((line, at) => forJobs(order, line, at)),
  );
  const lost = promisedAway(order);
  const isShort = new Set(
    order.packs.flatMap((packs, at) => (lines[at]?.short === 0 ? [] : [sizedKey(packs)])),
  );
  return {
    ...order,
    packs: order.packs.map((packs, at) => {
      const line = lines[at];
      return line === undefined || !isShort.has(sizedKey(packs))
        ? packs
        : shortPacks(packs, line, left, forJobs(order, line, at));
    }),
    covers: addJobPieces([
      ...lessPieces(order.covers, [...whole.gives, ...lost.gives], keyOfJob),
      ...left.gives,
    ]),
    offcuts: addUp([
      ...lessPieces(order.offcuts, [...whole.offcuts, ...lost.offcuts], sizedKey),
      ...left.offcuts,
    ]),
    fromShelf: lessPieces(
      order.fromShelf,
      lessPieces(order.givenUp, order.fromOrders, keyOfTaken),
      keyOfTaken,
    ),
    fromOrders: lessPieces(order.fromOrders, order.givenUp, keyOfTaken),
  };
}

/** The order as if it had given up those promises too. */
const withoutPromises = (order: OrderRecord, gone: readonly TakenPieces[]): OrderRecord =>
  inEffect(gone.length === 0 ? order : { ...order, givenUp: [...order.givenUp, ...gone] });

const keyOfTaken = ({ job, ...each }: TakenPieces): string => JSON.stringify([job, sizedKey(each)]);
const keyOfJob = (each: JobPieces): string => jobKeyOf(each.job, each);

/** Pieces of a line that were ordered for jobs; the others are for stock. */
const jobsPart = ({ packs }: OrderRecord, at: number): number => {
  const line = packs[at];
  return line === undefined ? 0 : line.count * line.packSize - line.leftOver;
};

/** Those of them that come in the end. */
const forJobs = (order: OrderRecord, { ordered, short }: LineStand, at: number): number =>
  Math.min(ordered - short, jobsPart(order, at));

/** The packs at the cost of what comes of them, shared as the order shared it: over what is made. */
function shortPacks(
  packs: OrderedPacks,
  { ordered, short }: LineStand,
  { made }: Goods,
  forTheJobs: number,
): OrderedPacks {
  const comes = ordered - short;
  const leftOver = pieces(comes - forTheJobs);
  const cost = cents(Math.round((packs.cost * comes) / ordered));
  const weights = [
    ...(made.get(sizedKey(packs)) ?? []).map((each) => ({
      job: each.job,
      weight: each.pieces * lengthOf(each),
    })),
    { job: null, weight: leftOver * lengthOf(packs) },
  ];
  return { ...packs, leftOver, cost, shares: shareCost(cost, weights) };
}

const lengthOf = ({ size }: Pick<SizedPieces, "size">): number =>
  size.length === 1 ? (size[0] ?? 1) : 1;

/** What is not given any more since a promise was given up; of bars, the last of the cut list. */
function promisedAway(order: OrderRecord): Pick<Goods, "gives" | "offcuts"> {
  const gives: JobPieces[] = [];
  const offcuts: SizedPieces[] = [];
  for (const { job, ...gone } of order.givenUp) {
    if (job !== null) {
      gives.push({ ...gone, job });
      continue;
    }
    let bars: number = gone.pieces;
    for (const cut of (order.cuts ?? []).toReversed()) {
      if (cut.isBought || sizedKey(cut.bar) !== sizedKey(gone)) continue;
      const lost = Math.min(bars, cut.bars);
      bars -= lost;
      gives.push(...times(cut.gives, lost));
      offcuts.push(...times(cut.offcuts, lost));
    }
  }
  return { gives, offcuts };
}
