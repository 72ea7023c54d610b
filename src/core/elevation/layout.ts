/** How a kind of door is laid out: what stands around it, where its pieces go, what is measured. */
import type { Spot } from "../base/picture";
import { inches } from "../base/units";
import type { KitPiece } from "./connections";
import type { Measure, Outline, Shape, Surrounding } from "./elevation";
import type { PartKind } from "./partKinds";

/** One or more outlines that draw one piece. Never empty. */
export type PieceOutlines = readonly Outline[];

/** Where the pieces of one kind go, all at once: as many entries as pieces, in their order. */
export type Placer = (pieces: readonly KitPiece[]) => readonly PieceOutlines[];

/** A layout for a right hand. A kind without a placer has no place of its own here. */
export type Layout = {
  readonly around: readonly Shape[];
  readonly measures: readonly Measure[];
  readonly placers: Readonly<Partial<Record<PartKind, Placer>>>;
};

export const box = (x: number, y: number, width: number, height: number): Outline => ({
  form: "box",
  x,
  y,
  width,
  height,
});

/** A box around its middle. */
export const boxAt = ({ x, y }: Spot, width: number, height: number): Outline =>
  box(x - width / 2, y - height / 2, width, height);

export const around = (kind: Surrounding, outline: Outline): Shape => ({
  kind,
  outline,
  place: null,
});

export const line = (fromX: number, fromY: number, toX: number, toY: number): Outline => ({
  form: "line",
  from: { x: fromX, y: fromY },
  to: { x: toX, y: toY },
});

/** `count` spots at equal distances from `from` to `to`, half a distance from both ends. */
export const spread = (count: number, from: number, to: number): readonly number[] =>
  Array.from({ length: count }, (_, index) => from + ((to - from) * (index + 0.5)) / count);

/** `count` spots from `from` to `to`, the first and the last at the ends; a single one is in the middle. */
export const fromEndToEnd = (count: number, from: number, to: number): readonly number[] =>
  count === 1
    ? [(from + to) / 2]
    : Array.from({ length: count }, (_, index) => from + ((to - from) * index) / (count - 1));

/** `pieces` shared over `groups` in their order: as even as can be, the first ones getting the odd ones. */
export function groupsOf<T>(pieces: readonly T[], groups: number): readonly (readonly T[])[] {
  const shares: T[][] = Array.from({ length: groups }, () => []);
  for (const [index, piece] of pieces.entries()) {
    shares[Math.floor((index * groups) / pieces.length)]?.push(piece);
  }
  return shares;
}

/**
 * A measure from `from` to `to`. Its length is the distance itself, so that no line can say another
 * number than it shows.
 */
export const measure = (
  side: Measure["side"],
  level: number,
  from: number,
  to: number,
  name: string,
): Measure => ({
  side,
  level,
  from,
  to,
  length: inches(Number(Math.abs(to - from).toPrecision(12))),
  name,
  isCut: false,
});

/** The first length of a piece's size, or `fallback` where it has none. */
export const lengthOf = ({ size: [first] }: KitPiece, fallback: number): number =>
  first ?? fallback;

/** Symbols of hardware that has no size of its own, in inches. */
export const symbols = {
  post: 2,
  jamb: 2,
  rail: 2,
  track: 3,
  overLeaf: 3,
  handleHeight: 38,
} as const;

/** The floor, and posts of the partition left and right of an opening. */
export function postsAround(
  width: number,
  height: number,
  further: readonly number[] = [],
): readonly Shape[] {
  const { post } = symbols;
  return [-post, width, ...further].map((x) => around("post", box(x, 0, post, height)));
}
