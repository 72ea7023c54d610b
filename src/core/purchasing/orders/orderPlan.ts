/** The order as it was worked out: all that its sheets and its record are made from. */
import type { Finding } from "../../base/finding";
import type { Cents, Pieces } from "../../base/units";
import type { CutPlan } from "../cutting/cutProblem";
import type { Deadline } from "./dates";
import type { Need } from "../need";
import type { OrderJob } from "./orderInput";
import type { SizedPieces } from "../sizedPieces";
import type { BoughtMore, BoughtPacks } from "../offers/packs";
import type { Share } from "./shares";
import type { SizedItem } from "../sizedItem";
import type { SupplierCharge } from "./supplierPlan";

/** Packs of a line, with whose cost they are and when they must be ordered. */
export type LinePacks = BoughtPacks & {
  /** Add up to the cost. */
  readonly shares: readonly Share[];
  /** `null` where no job that needs it has a date. */
  readonly deadline: Deadline | null;
};

/** Pieces that a line gives to a job. */
export type JobPart = { readonly job: string; readonly pieces: Pieces };

type LineParts = SizedItem & {
  /** What is to be had of it: pieces, or bars for a line of bars. */
  readonly buy: Pieces;
  readonly packs: readonly LinePacks[];
  readonly cost: Cents;
  /** Beyond what is needed; goes to stock. */
  readonly leftOver: Pieces;
  readonly more: BoughtMore | null;
  /** False only where its packs are good and not proven cheapest. */
  readonly exact: boolean;
  /** Of all its packs, by job, stock last. */
  readonly shares: readonly Share[];
  /** The earliest date of the jobs it is bought for. */
  readonly needBy: number | null;
  /** The earliest of its packs' deadlines. */
  readonly deadline: Deadline | null;
};

/**
 * `loose`: a need bought in packs. `cut`: a need cut from bars; it has no packs of its own. `bar`:
 * the new bars of one length that the cut plan asks for, bought in packs.
 */
export type OrderLine = LineParts &
  (
    | { readonly kind: "loose" | "cut"; readonly need: Need; readonly forJobs: readonly JobPart[] }
    | { readonly kind: "bar"; readonly need: null; readonly forJobs: readonly [] }
  );

/** What a supplier adds to its order, and whose cost that is. */
export type OrderCharge = SupplierCharge & {
  /** Of what is made up and freight, in proportion to the goods. */
  readonly shares: readonly Share[];
};

/** Against ordering for each job by itself: less of each, or more where below zero. */
export type Savings = {
  readonly money: Cents;
  /** Pieces and bars bought. */
  readonly pieces: number;
  readonly packs: number;
};

/** Against other ways to choose suppliers. */
export type SupplierSavings = {
  /** What buying from several saves against the cheapest one that sells all; `null` where none does. */
  readonly againstOne: { readonly supplier: string; readonly saves: Cents } | null;
  /** What keeping suppliers together saves against each thing at its lowest price. */
  readonly againstPriceAlone: Cents;
  /** Whether no choice of suppliers costs less. */
  readonly proven: boolean;
  readonly lowerBound: Cents;
};

export type OrderPlan = {
  /** Whether everything that is needed is on it. */
  readonly complete: boolean;
  readonly jobs: readonly OrderJob[];
  /** By item, then by size. */
  readonly lines: readonly OrderLine[];
  readonly cutPlans: readonly CutPlan[];
  readonly charges: readonly OrderCharge[];
  readonly suppliers: SupplierSavings;
  /** Everything that everyone pays, by job, stock last; adds up to the total. */
  readonly shares: readonly Share[];
  /** Left over in packs, and offcuts worth keeping: stock on hand once all is received. */
  readonly leftOver: readonly SizedPieces[];
  /** `null` for an order of one job, and where something is not sold or fits no bar. */
  readonly saved: Savings | null;
  /** Goods and charges. */
  readonly total: Cents;
  readonly findings: readonly Finding[];
};
