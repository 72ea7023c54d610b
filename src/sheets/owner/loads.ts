/** What a truck is loaded with, row by row; together they are the job's hardware and its spares. */
import { bagCopies, type Bag, type JobBags, type PackedOpening } from "../../core/bags/bags";
import { isBigPart } from "../../core/bags/bigParts";
import { correctedContents } from "../../core/bags/jobBag";
import type { Inches } from "../../core/base/units";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { LengthStyle } from "../../core/lengths/writeLength";
import type { MeasureStyle } from "../../core/measures/measures";
import { shownAmount } from "../../core/measures/writeMeasure";
import { itemKey, type Items } from "../../core/pricing/item";
import { unitsPerPiece } from "../../core/pricing/itemUnit";
import type { Material } from "../../core/pricing/material";
import { pieceKey } from "../../core/takeoff/partColumn";
import { sizeTexts } from "../../core/takeoff/sizeTexts";
import { bagWords, copyWords } from "../crew/packingOpening";

export type Load = {
  readonly what: string;
  /** The marks it is for; the empty text for the job as a whole. */
  readonly mark: string;
  readonly size: string;
  /** Whole; below zero for what is taken out of a bag again. */
  readonly pieces: number;
  /** In the unit that is shown; `null` where a part of it cannot be weighed. */
  readonly weight: number | null;
};

type Sized = { readonly item: string; readonly size: readonly Inches[] };

/** Of one piece, in the unit that is shown; `null` where the items table does not say. */
export type PieceWeight = (piece: Sized) => number | null;

/** Weights by the rule that the hardware list weighs by. */
export function loadWeights({ lines }: Material, items: Items, style: MeasureStyle): PieceWeight {
  const known = new Map(
    lines.map(({ line }) => {
      const item = items.get(itemKey(line.item));
      const units = item === undefined ? null : unitsPerPiece(item.unit, line.size);
      const weight = item?.weight ?? null;
      const each =
        units === null || weight === null ? null : shownAmount(units * weight, "weight", style);
      return [pieceKey(line.item, line.size), each];
    }),
  );
  return ({ item, size }) => known.get(pieceKey(item, size)) ?? null;
}

const weightOf = (each: number | null, pieces: number): number | null =>
  each === null ? null : each * pieces;

/** The sum; `null` where one of them is not known. */
const weightTogether = (weights: readonly (number | null)[]): number | null =>
  weights.reduce(
    (sum: number | null, weight) => (sum === null || weight === null ? null : sum + weight),
    0,
  );

/** Big parts by item and size, with the marks that they are for. */
export function bigPartLoads(
  { openings }: JobBags,
  { takeOff, material }: JobEstimate,
  lengths: LengthStyle,
  weight: PieceWeight,
): readonly Load[] {
  const sizeText = sizeTexts(
    material.lines.map(({ line }) => line),
    lengths,
  );
  const marks = new Map<string, Map<string, number>>();
  for (const { opening, bags } of openings) {
    for (const { item, size, pieces } of bags.flatMap(({ contents }) => contents)) {
      if (!isBigPart(size)) continue;
      const key = pieceKey(item, size);
      const byMark = marks.get(key) ?? new Map<string, number>();
      marks.set(key, byMark);
      byMark.set(opening.mark, (byMark.get(opening.mark) ?? 0) + pieces * opening.quantity);
    }
  }
  return takeOff.lines
    .filter(({ size }) => isBigPart(size))
    .map((line) => ({
      what: line.item,
      mark: [...(marks.get(pieceKey(line.item, line.size)) ?? [])]
        .map(([mark, pieces]) => (pieces === 1 ? mark : `${mark} (${pieces})`))
        .join(", "),
      size: sizeText(line),
      pieces: line.quantity,
      weight: weightOf(weight(line), line.quantity),
    }));
}

/** Each bag with what is in it, big parts aside; or, not `oneByOne`, all bags of an opening together. */
export function bagLoads(bags: JobBags, weight: PieceWeight, oneByOne: boolean): readonly Load[] {
  if (oneByOne) {
    return [...bagCopies(bags)].map(({ opening, copy, bag }) =>
      bagLoad(opening, copy, bag, weight),
    );
  }
  return bags.openings.map((opening) => {
    const { mark, quantity } = opening.opening;
    const loads = opening.bags.map((bag) => bagLoad(opening, 1, bag, weight));
    const each = weightTogether(loads.map((load) => load.weight));
    return {
      what: `${opening.bags.length} bags for each of ${quantity}`,
      mark,
      size: "",
      pieces: quantity * loads.reduce((sum, { pieces }) => sum + pieces, 0),
      weight: weightOf(each, quantity),
    };
  });
}

function bagLoad(opening: PackedOpening, copy: number, bag: Bag, weight: PieceWeight): Load {
  const inBag = bag.contents.filter(({ size }) => !isBigPart(size));
  const pieces = inBag.reduce((sum, content) => sum + content.pieces, 0);
  return {
    what: `${bagWords(bag)}${pieces === 0 ? " (big parts only)" : ""}`,
    mark: copyWords(opening, copy),
    size: "",
    pieces,
    weight: weightTogether(inBag.map((content) => weightOf(weight(content), content.pieces))),
  };
}

/** Corrections, and spares. */
export function jobLoads(
  { lines }: Material,
  lengths: LengthStyle,
  weight: PieceWeight,
): readonly [corrections: readonly Load[], spares: readonly Load[]] {
  const all = lines.map(({ line }) => line);
  const sizeText = sizeTexts(all, lengths);
  const load = (piece: Sized, pieces: number, why: string): Load => ({
    what: why === "" ? piece.item : `${piece.item}: ${why}`,
    mark: "",
    size: sizeText(piece),
    pieces,
    weight: weightOf(weight(piece), pieces),
  });
  return [
    correctedContents(all).map((content) => load(content, content.pieces, content.why)),
    lines.filter(({ spares }) => spares > 0).map(({ line, spares }) => load(line, spares, "")),
  ];
}
