/** An order plan -> what its record keeps. */
import { pieces } from "../../base/units";
import { barsAmong, sizeOfBar } from "../bars";
import type { CutLength } from "../cutting/cutLength";
import type { CutPlan } from "../cutting/cutProblem";
import { offcutsOf } from "../leftOver";
import { addJobPieces } from "./orderGoods";
import type { Standing } from "../orders/orderInput";
import { addUp, type JobPieces, type SizedPieces } from "../sizedPieces";
import type { OrderLine, OrderPlan } from "../orders/orderPlan";
import { isSameItem } from "../sizedItem";
import type {
  OrderContents,
  OrderedCut,
  OrderedPacks,
  OrderedWords,
  TakenPieces,
} from "./orderRecord";
import type { SizedItem } from "../sizedItem";

/** What a record keeps besides the plan. */
export type ContentsBasis = {
  /** The one that the plan was made with. */
  readonly standing: Standing;
  readonly wordsOf: (sized: SizedItem) => OrderedWords;
  readonly currency: string;
  readonly complete: boolean;
};

export function orderContents(plan: OrderPlan, basis: ContentsBasis): OrderContents {
  const { standing, currency, complete } = basis;
  const loose = plan.lines.filter((line) => line.kind === "loose");
  const bars = plan.cutPlans.map((cut) => usedBars(cut, standing));
  return {
    jobs: plan.jobs,
    packs: plan.lines.flatMap((line) => orderedPacks(line, plan, basis)),
    charges: plan.charges.map(({ supplier, madeUp, freight, shares }) => ({
      supplier,
      madeUp,
      freight,
      shares,
    })),
    covers: plan.lines.flatMap((line) => coversOf(line, plan.cutPlans)),
    fromShelf: [
      ...loose.flatMap((line) => takenLoose(line, "fromHand")),
      ...bars.flatMap(({ shelf }) => shelf),
    ],
    fromOrders: [
      ...loose.flatMap((line) => takenLoose(line, "fromOrder")),
      ...bars.flatMap(({ orders }) => orders),
    ],
    offcuts: addUp(plan.cutPlans.flatMap(offcutsOf)),
    cuts: plan.cutPlans.flatMap(cutsOf),
    total: plan.total,
    currency,
    complete,
  };
}

/** The last packs of a line hold what is left over of it. */
function orderedPacks(
  line: OrderLine,
  plan: OrderPlan,
  { wordsOf }: ContentsBasis,
): readonly OrderedPacks[] {
  const jobs = jobsOf(line, plan);
  let left: number = line.leftOver;
  return line.packs
    .toReversed()
    .map(({ offer, count, cost, shares, deadline }): OrderedPacks => {
      const own = Math.min(left, count * offer.packSize);
      left -= own;
      const { item, size, needBy } = line;
      const { supplier, packSize, price } = offer;
      return {
        item,
        size,
        words: wordsOf(line),
        supplier,
        packSize,
        count,
        price,
        cost,
        leftOver: pieces(own),
        needBy,
        orderBy: deadline?.orderBy ?? null,
        jobs,
        shares,
      };
    })
    .reverse();
}

/** The jobs that a line gives something to; for bars, the jobs whose pieces are cut from them. */
function jobsOf(line: OrderLine, plan: OrderPlan): readonly string[] {
  if (line.kind !== "bar") return line.forJobs.map(({ job }) => job);
  const sharing = new Set(line.shares.map(({ job }) => job));
  return plan.jobs.map(({ job }) => job).filter((job) => sharing.has(job));
}

/** What each job gets of a line: from packs, shelf and orders; for cut lengths what the plan places. */
function coversOf(line: OrderLine, cutPlans: readonly CutPlan[]): readonly JobPieces[] {
  if (line.kind === "bar") return [];
  const { item, size } = line;
  const isBought = line.kind === "loose" && (line.packs.length > 0 || line.buy === 0);
  return line.need.jobs.flatMap(({ job, buy, fromHand, fromOrder }) => {
    const bought =
      line.kind === "cut" ? buy - unplacedFor(line, job, cutPlans) : isBought ? buy : 0;
    const all = bought + fromHand + fromOrder;
    return all === 0 ? [] : [{ job, item, size, pieces: pieces(all) }];
  });
}

const unplacedFor = (line: OrderLine, job: string, cutPlans: readonly CutPlan[]): number =>
  cutPlans
    .filter((plan) => isSameItem(plan, line))
    .flatMap((plan) => plan.unplaced)
    .filter((piece) => piece.job === job && sizeOfBar(piece.length)[0] === line.size[0])
    .reduce((sum, piece) => sum + piece.count, 0);

function takenLoose(line: OrderLine, from: "fromHand" | "fromOrder"): readonly TakenPieces[] {
  const { item, size, need } = line;
  return (need?.jobs ?? []).flatMap((job) =>
    job[from] === 0 ? [] : [{ item, size, job: job.job, pieces: job[from] }],
  );
}

/** Bars that the plan takes: off the shelf as far as they are there, then of what is on order. */
function usedBars(
  plan: CutPlan,
  standing: Standing,
): { readonly shelf: readonly TakenPieces[]; readonly orders: readonly TakenPieces[] } {
  const there = new Map<number, number>();
  for (const { length, count } of barsAmong(plan.item, standing.onHand)) {
    there.set(length, (there.get(length) ?? 0) + count);
  }
  const shelf: SizedPieces[] = [];
  const orders: SizedPieces[] = [];
  for (const bar of plan.bars) {
    if (bar.from === "stock") continue;
    const left = there.get(bar.length) ?? 0;
    const one = { item: plan.item, size: sizeOfBar(bar.length), pieces: pieces(1) };
    (left > 0 ? shelf : orders).push(one);
    there.set(bar.length, left - 1);
  }
  const shared = (all: readonly SizedPieces[]): readonly TakenPieces[] =>
    addUp(all).map((each) => ({ ...each, job: null }));
  return { shelf: shared(shelf), orders: shared(orders) };
}

/** Bars in the order of the plan; those one after another that are cut alike are one entry. */
function cutsOf(plan: CutPlan): readonly OrderedCut[] {
  const cuts: OrderedCut[] = [];
  for (const { from, length, pieces: placed, offcut, kept } of plan.bars) {
    const sized = (of: CutLength): SizedItem => ({ item: plan.item, size: sizeOfBar(of) });
    const one = placed.map((piece): JobPieces => ({
      job: piece.job,
      ...sized(piece.length),
      pieces: pieces(1),
    }));
    const cut: OrderedCut = {
      bar: sized(length),
      bars: pieces(1),
      isBought: from === "stock",
      gives: addJobPieces(one),
      offcuts: kept ? [{ ...sized(offcut), pieces: pieces(1) }] : [],
    };
    const last = cuts.at(-1);
    if (last !== undefined && isAlike(last, cut)) {
      cuts[cuts.length - 1] = { ...last, bars: pieces(last.bars + 1) };
    } else cuts.push(cut);
  }
  return cuts;
}

const isAlike = (one: OrderedCut, other: OrderedCut): boolean =>
  JSON.stringify({ ...one, bars: 0 }) === JSON.stringify({ ...other, bars: 0 });
