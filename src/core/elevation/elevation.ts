/**
 * An elevation of one opening: what is counted, each piece at its place, drawn from the numbers it
 * was counted with.
 *
 * Inches; x to the right as the crew sees it, y up from the floor (from the sill, for what stands
 * on no floor). What has a size is drawn to it; hardware without one has the plain size of a
 * symbol. Every piece of the count is at one place, so the places add up to the count.
 */
import type { Inches, Pieces } from "../base/units";
import type { Box, Spot } from "../base/picture";
import type { PartKind } from "./partKinds";

export type Hand = "left" | "right";

/** `y` is the lower edge of a box. */
export type Outline =
  | ({ readonly form: "box" } & Box)
  | { readonly form: "line"; readonly from: Spot; readonly to: Spot }
  | { readonly form: "circle"; readonly center: Spot; readonly radius: number };

/** What is there besides the parts that are counted. */
export const surroundings = [
  "floor",
  "post",
  "transom",
  "opening",
  "joint",
  "travel",
  "swing",
  "tail run",
] as const;
export type Surrounding = (typeof surroundings)[number];

export type Shape =
  | { readonly kind: Surrounding; readonly outline: Outline; readonly place: null }
  | { readonly kind: PartKind; readonly outline: Outline; readonly place: string };

/** Pieces of one item at a place. */
export type PlacedPieces = {
  readonly item: string;
  readonly size: readonly Inches[];
  readonly pieces: Pieces;
};

/** One piece where it goes, with what fastens it. */
export type Place = {
  /** Unique in the elevation, and the same for the same opening each time. */
  readonly id: string;
  readonly kind: PartKind;
  /** Such as `trolley 1 of 2`, or the bag's name for what has no place of its own. */
  readonly name: string;
  readonly bag: string;
  /** The part itself first. Never empty. */
  readonly contents: readonly PlacedPieces[];
};

/** A measured length beside the picture; `from` and `to` are x for those above and below, else y. */
export type Measure = {
  readonly side: "above" | "below" | "left" | "right";
  /** How far out it would like to be, from 0. */
  readonly level: number;
  readonly from: number;
  readonly to: number;
  readonly length: Inches;
  /** Such as `width`. */
  readonly name: string;
  /** Longer than it is drawn: it goes on beyond the picture at its `to`. */
  readonly isCut: boolean;
};

export type Elevation = {
  readonly job: string;
  readonly mark: string;
  readonly type: string;
  readonly hand: Hand;
  /** The schedule says no hand, or both: it is drawn as a right hand. */
  readonly isHandAssumed: boolean;
  /** In the order of drawing. */
  readonly shapes: readonly Shape[];
  readonly places: readonly Place[];
  readonly measures: readonly Measure[];
};
