/** Orders in a few words, for tests. All jobs, suppliers and prices are invented. */
import { inches, pieces, type Inches } from "../../../src/core/base/units";
import { cutLength, cutLengthOf } from "../../../src/core/purchasing/cutting/cutLength";
import { cutPlan } from "../../../src/core/purchasing/cutting/cutPlan";
import { fiveDayWeek } from "../../../src/core/purchasing/orders/dates";
import type { Offer } from "../../../src/core/purchasing/offers/offers";
import { planOrder } from "../../../src/core/purchasing/orders/order";
import type { PlanCuts } from "../../../src/core/purchasing/orders/orderCuts";
import {
  nothingStanding,
  type Demand,
  type OrderInput,
  type Standing,
} from "../../../src/core/purchasing/orders/orderInput";
import type { OrderPlan } from "../../../src/core/purchasing/orders/orderPlan";
import { noSpares, type SparesRule } from "../../../src/core/purchasing/spares";
import type { SupplierTerms } from "../../../src/core/purchasing/orders/supplierPlan";

/** Monday 7 September 2026. */
export const today = 46_272;

/** `["Mill", "101", "HN 1/4", 12]`; a length makes it a piece that is cut. */
export type DemandWords = readonly [
  job: string,
  mark: string,
  item: string,
  quantity: number,
  length?: number,
];

export const demandOf = ([job, mark, item, quantity, length]: DemandWords): Demand => ({
  job,
  mark,
  item,
  size: length === undefined ? [] : [inches(length)],
  quantity: pieces(quantity),
  isCut: length !== undefined,
});

/** Nuts in packs, and two pieces that one bar of 240 in gives. */
export const twoJobs: readonly DemandWords[] = [
  ["Mill", "101", "HN 1/4", 20],
  ["Depot", "7", "HN 1/4", 15],
  ["Mill", "101", "TRACK", 1, 96],
  ["Depot", "7", "TRACK", 1, 120],
];

type InputParts = {
  readonly demands: readonly DemandWords[];
  readonly offers: readonly Offer[];
  /** Need-by dates in days from today; a job that is not here has none. */
  readonly needBy?: Readonly<Record<string, number>>;
  readonly standing?: Partial<Standing>;
  readonly terms?: readonly SupplierTerms[];
  readonly spares?: SparesRule;
  readonly kerf?: number;
  readonly bufferDays?: number;
  readonly leaveOutLate?: boolean;
};

export const inputOf = (parts: InputParts): OrderInput => ({
  jobs: [...new Set(parts.demands.map(([job]) => job))].map((job) => {
    const days = parts.needBy?.[job];
    return { job, needBy: days === undefined ? null : today + days, shipTo: `${job} gate` };
  }),
  demands: parts.demands.map(demandOf),
  standing: { ...nothingStanding, ...parts.standing },
  offers: parts.offers,
  terms: parts.terms ?? [],
  spares: () => parts.spares ?? noSpares,
  saw: () => ({
    kerf: cutLengthOf(inches(parts.kerf ?? 0)),
    endTrim: cutLength(0),
    shortestOffcut: cutLengthOf(inches(12)),
  }),
  timing: { calendar: fiveDayWeek(), today, bufferDays: parts.bufferDays ?? 0 },
  leaveOutLate: parts.leaveOutLate ?? true,
});

export const planCuts: PlanCuts = (problem) => cutPlan(problem, { solver: null });

export const showSize = (size: readonly Inches[]): string => size.join(" x ");

export const orderOf = (input: OrderInput): OrderPlan => planOrder(input, planCuts, showSize);
