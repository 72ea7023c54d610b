/** What an order is made from. */
import type { Pieces } from "../../base/units";
import type { SawRules } from "../cutting/cutProblem";
import type { Timing } from "./dates";
import type { Offer } from "../offers/offers";
import type { SizedItem } from "../sizedItem";
import type { JobPieces, SizedPieces } from "../sizedPieces";
import type { SparesRule } from "../spares";
import type { SupplierTerms } from "./supplierPlan";

/** A job that the order is for. Names are told apart as they are; the caller has settled clashes. */
export type OrderJob = {
  readonly job: string;
  /** A date serial; `null` where no date is known. */
  readonly needBy: number | null;
  /** Where its goods go; the empty text for the firm's own address. */
  readonly shipTo: string;
};

/** What one mark of a job counts of a thing, after corrections. */
export type Demand = SizedItem & {
  readonly job: string;
  readonly mark: string;
  readonly quantity: Pieces;
  /** Whether it is cut from stock lengths. Its size is then one length. */
  readonly isCut: boolean;
};

/** What is there already. */
export type Standing = {
  /** Free on the shelf, bars and offcuts too, each length a size. */
  readonly onHand: readonly SizedPieces[];
  /** Ordered for stock and not received. */
  readonly onOrder: readonly SizedPieces[];
  /** What earlier orders and the shelf have given to jobs. */
  readonly supplied: readonly JobPieces[];
  /** What sent orders will give to jobs. */
  readonly orderedForJobs: readonly JobPieces[];
};

export type OrderInput = {
  readonly jobs: readonly OrderJob[];
  /** Of these jobs; those of others are passed over. */
  readonly demands: readonly Demand[];
  readonly standing: Standing;
  readonly offers: readonly Offer[];
  readonly terms: readonly SupplierTerms[];
  readonly spares: (item: string) => SparesRule;
  /** Spares that a person typed for a job take the place of the rule; none where absent. */
  readonly typedSpares?: readonly JobPieces[];
  readonly saw: (item: string) => SawRules;
  readonly timing: Timing;
  /** Whether an offer that comes too late is passed over where another comes in time. */
  readonly leaveOutLate: boolean;
};

export const nothingStanding: Standing = {
  onHand: [],
  onOrder: [],
  supplied: [],
  orderedForJobs: [],
};
