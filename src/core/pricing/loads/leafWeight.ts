/** The weight of a leaf from its parts, each step explained; what has no weight is named, not zero. */
import { inches, pounds, type Inches, type Pounds } from "../../base/units";
import type { MeasureStyle } from "../../measures/measures";
import { measureText, placeText } from "../../measures/writeMeasure";
import { figureText } from "../rollup/figureText";
import { meshPerSquareFoot, sectionPerFoot, type Mesh, type Section } from "./meshWeight";

/** One part of a leaf. `count` is how many alike. */
export type LeafPart = { readonly name: string; readonly count: number } & (
  | { readonly kind: "mesh"; readonly mesh: Mesh; readonly width: Inches; readonly height: Inches }
  | { readonly kind: "section"; readonly section: Section; readonly length: Inches }
  /** By the foot, as a supplier gives it. */
  | { readonly kind: "perFoot"; readonly poundsPerFoot: number; readonly length: Inches }
  /** By the square foot, as a supplier gives it. */
  | {
      readonly kind: "perSquareFoot";
      readonly poundsPerSquareFoot: number;
      readonly width: Inches;
      readonly height: Inches;
    }
  /** By the item; `null` is not known. */
  | { readonly kind: "each"; readonly poundsEach: number | null }
);

export type WeighedPart = {
  readonly name: string;
  /** Of all `count`; `null` is not known. */
  readonly weight: Pounds | null;
  /** Such as `2 x 48 in x 84 in of mesh at 0.736 lb per sq ft = 41.2 lb`. */
  readonly because: string;
};

export type WeighedParts = {
  readonly parts: readonly WeighedPart[];
  /** Of every part whose weight is known. */
  readonly weight: Pounds;
  /** The parts with no weight: where there is one, `weight` is only a least. */
  readonly notWeighed: readonly string[];
};

type Piece = { readonly weight: number; readonly says: string };

/** What one piece weighs and how that was found, or `null`. */
function pieceOf(part: LeafPart, style: MeasureStyle): Piece | null {
  switch (part.kind) {
    case "mesh":
      return bySquareFoot(part, meshPerSquareFoot(part.mesh), "of mesh ", style);
    case "section":
      return byFoot(part.length, sectionPerFoot(part.section), style);
    case "perFoot":
      return byFoot(part.length, part.poundsPerFoot, style);
    case "perSquareFoot":
      return bySquareFoot(part, part.poundsPerSquareFoot, "", style);
    case "each":
      return part.poundsEach === null
        ? null
        : {
            weight: part.poundsEach,
            says: `${measureText(part.poundsEach, "weight", style, 3)} each`,
          };
  }
}

const byFoot = (length: Inches, perFoot: number, style: MeasureStyle): Piece => ({
  weight: (length / 12) * perFoot,
  says: `${placeText(length, style)} at ${measureText(perFoot, "weight by length", style, 3)}`,
});

const bySquareFoot = (
  { width, height }: { readonly width: Inches; readonly height: Inches },
  perSquareFoot: number,
  what: string,
  style: MeasureStyle,
): Piece => ({
  weight: ((width * height) / 144) * perSquareFoot,
  says:
    `${placeText(width, style)} x ${placeText(height, style)} ${what}at ` +
    measureText(perSquareFoot, "weight by area", style, 3),
});

/** Weighs every part. Parts keep their order. `style` is that of the words. */
export function weighParts(
  parts: readonly LeafPart[],
  style: MeasureStyle = "pounds",
): WeighedParts {
  const weighed = parts.map((part): WeighedPart => {
    const piece = pieceOf(part, style);
    if (piece === null) return { name: part.name, weight: null, because: "no weight is given" };
    const weight = pounds(piece.weight * part.count);
    return {
      name: part.name,
      weight,
      because: `${figureText(part.count, 3)} x ${piece.says} = ${measureText(weight, "weight", style, weight < 0.1 ? 3 : 1)}`,
    };
  });
  return {
    parts: weighed,
    weight: pounds(weighed.reduce((sum, { weight }) => sum + (weight ?? 0), 0)),
    notWeighed: weighed.filter(({ weight }) => weight === null).map(({ name }) => name),
  };
}

/**
 * The frame and mesh of one panel: mesh over the whole panel and the section around its edge, which
 * counts the corners twice and so errs to the heavy side by a section's width at each corner.
 */
export const panelParts = (
  name: string,
  count: number,
  width: Inches,
  height: Inches,
  mesh: Mesh,
  frame: Section,
): readonly LeafPart[] => [
  { name: `${name}: mesh`, count, kind: "mesh", mesh, width, height },
  {
    name: `${name}: frame`,
    count,
    kind: "section",
    section: frame,
    length: inches(2 * (width + height)),
  },
];
