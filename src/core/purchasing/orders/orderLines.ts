/** Phase five of an order: lines with their packs, whose cost they are, and when they must go out. */
import { cents, pieces } from "../../base/units";
import { sizeOfBar, type BarNeed } from "../bars";
import { inchesOf } from "../cutting/cutLength";
import type { CutPlan } from "../cutting/cutProblem";
import { deadline, type Deadline, type Timing } from "./dates";
import type { OrderNeed } from "./orderNeeds";
import type { JobPart, LinePacks, OrderCharge, OrderLine } from "./orderPlan";
import type { PackCover } from "../offers/packs";
import { addShares, shareCost, type ShareWeight } from "./shares";
import type { SizedItem } from "../sizedItem";
import type { SupplierCharge } from "./supplierPlan";

/** A need that is bought loose; `cover` is `null` where there is nothing to buy or nobody sells it. */
export function looseLine(
  { need, needBy }: OrderNeed,
  cover: PackCover | null,
  timing: Timing,
): OrderLine {
  const forJobs = jobParts(need);
  const weights: readonly ShareWeight[] = [
    ...forJobs.map((part) => ({ job: part.job, weight: part.pieces })),
    { job: null, weight: cover?.leftOver ?? 0 },
  ];
  return {
    kind: "loose",
    need,
    forJobs,
    buy: need.buy,
    needBy,
    ...bought(need, cover, weights, needBy, timing),
  };
}

/** A need that is cut: its cost stands with the bars. */
export const cutLine = ({ need, needBy }: OrderNeed): OrderLine => ({
  kind: "cut",
  item: need.item,
  size: need.size,
  need,
  forJobs: jobParts(need),
  buy: need.buy,
  packs: [],
  cost: cents(0),
  leftOver: pieces(0),
  more: null,
  exact: true,
  shares: [],
  needBy,
  deadline: null,
});

/** Bars of one length. The lengths cut from them are the jobs' weights, offcuts kept and bars left over stock's. */
export function barLine(
  { length, bars }: BarNeed,
  plan: CutPlan,
  cover: PackCover | null,
  needBy: number | null,
  timing: Timing,
): OrderLine {
  const sized = { item: plan.item, size: sizeOfBar(length) };
  const own = plan.bars.filter((bar) => bar.from === "stock" && bar.length === length);
  const weights = [
    ...own.flatMap((bar) =>
      bar.pieces.map((piece) => ({ job: piece.job, weight: inchesOf(piece.length) })),
    ),
    ...own.map((bar) => ({ job: null, weight: bar.kept ? inchesOf(bar.offcut) : 0 })),
    { job: null, weight: (cover?.leftOver ?? 0) * inchesOf(length) },
  ];
  return {
    kind: "bar",
    need: null,
    forJobs: [],
    buy: bars,
    needBy,
    ...bought(sized, cover, weights, needBy, timing),
  };
}

/** What a supplier adds, shared as its goods are. */
export function chargeLine(charge: SupplierCharge, lines: readonly OrderLine[]): OrderCharge {
  const { supplier } = charge;
  const ofSupplier = lines
    .flatMap((line) => line.packs)
    .filter(({ offer }) => offer.supplier === supplier);
  const weights = addShares(ofSupplier.map((packs) => packs.shares)).map(({ job, cost }) => ({
    job,
    weight: cost / 100,
  }));
  return { ...charge, shares: shareCost(cents(charge.madeUp + charge.freight), weights) };
}

type Bought = Pick<
  OrderLine,
  "item" | "size" | "packs" | "cost" | "leftOver" | "more" | "exact" | "shares" | "deadline"
>;

function bought(
  { item, size }: SizedItem,
  cover: PackCover | null,
  weights: readonly ShareWeight[],
  needBy: number | null,
  timing: Timing,
): Bought {
  const packs = (cover?.packs ?? []).map((each): LinePacks => ({
    ...each,
    shares: shareCost(each.cost, weights),
    deadline: needBy === null ? null : deadline(needBy, each.offer.leadDays, timing),
  }));
  return {
    item,
    size,
    packs,
    cost: cover?.cost ?? cents(0),
    leftOver: cover?.leftOver ?? pieces(0),
    more: cover?.more ?? null,
    exact: cover?.exact ?? true,
    shares: addShares(packs.map((each) => each.shares)),
    deadline: earliestDeadline(packs),
  };
}

const earliestDeadline = (packs: readonly LinePacks[]): Deadline | null =>
  packs.reduce<Deadline | null>(
    (first, each) =>
      each.deadline !== null && (first === null || each.deadline.orderBy < first.orderBy)
        ? each.deadline
        : first,
    null,
  );

const jobParts = (need: OrderNeed["need"]): readonly JobPart[] =>
  need.jobs.filter(({ buy }) => buy > 0).map(({ job, buy }) => ({ job, pieces: buy }));
