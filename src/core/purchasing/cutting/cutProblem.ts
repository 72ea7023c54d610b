/** What is to be cut from what, and the plan that says how. */
import type { Cents, Pieces } from "../../base/units";
import type { CutLength } from "./cutLength";

/** Alike pieces of one mark of one job. */
export type CutPieces = {
  readonly job: string;
  readonly mark: string;
  readonly length: CutLength;
  readonly count: Pieces;
};

/** A length that can be bought, as many as are wanted. */
export type StockLength = { readonly length: CutLength; readonly price: Cents };

/** Bars on hand of one length: offcuts worth keeping, and whole bars. They cost nothing now. */
export type BarsOnHand = { readonly length: CutLength; readonly count: Pieces };

/** What the saw and the bars' ends take, and what is worth keeping. */
export type SawRules = {
  /** What each cut eats. */
  readonly kerf: CutLength;
  /** What is taken off a new bar's two ends together, with the cuts that it needs. Bars on hand have been squared. */
  readonly endTrim: CutLength;
  /** What is left of a bar is kept from this length up; shorter is scrap. Zero keeps all. */
  readonly shortestOffcut: CutLength;
};

export type CutProblem = {
  readonly item: string;
  readonly pieces: readonly CutPieces[];
  readonly stock: readonly StockLength[];
  readonly onHand: readonly BarsOnHand[];
  readonly saw: SawRules;
};

/** One piece at its place on a bar. */
export type PlacedPiece = {
  readonly job: string;
  readonly mark: string;
  readonly length: CutLength;
};

/** One bar as it is cut, its longest piece first. */
export type Bar = {
  readonly from: "stock" | "onHand";
  /** The bar's full length. */
  readonly length: CutLength;
  /** Zero for a bar on hand. */
  readonly price: Cents;
  readonly pieces: readonly PlacedPiece[];
  /** What is left after the last cut; zero where the last cut eats the rest. */
  readonly offcut: CutLength;
  /** Whether the offcut is worth keeping. */
  readonly kept: boolean;
};

/**
 * Values of the pieces that prove the bound, one per length that is cut: no bar that can be bought
 * holds pieces worth more than its price in the same measure. Anyone can check it with these.
 */
export type BoundProof = readonly { readonly length: CutLength; readonly value: number }[];

export type CutPlan = {
  readonly item: string;
  readonly bars: readonly Bar[];
  /** The price of all new bars. */
  readonly cost: Cents;
  /** No plan that places these pieces costs less. */
  readonly lowerBound: Cents;
  readonly boundProof: BoundProof;
  /** Whether cost and bound meet and every piece has its place. */
  readonly proven: boolean;
  /** Pieces that no bar can hold, or that only bars on hand could and there are too few. */
  readonly unplaced: readonly CutPieces[];
};
