/**
 * A line drawing as plain data, small enough for every host to draw: lines, boxes, circles, words.
 *
 * Points (1/72 in) with x to the right and y down. Colours are the host's: a mark only says how
 * strong it is, so that a picture can be read in a light theme, in a dark one and in print.
 */

/** How strong a line is. `strokeWidths` gives each its width in points. */
export const strokes = ["heavy", "part", "thin", "around", "dashed", "measure"] as const;
export type Stroke = (typeof strokes)[number];

/** Points. */
export const strokeWidths: Readonly<Record<Stroke, number>> = {
  heavy: 1.75,
  part: 1,
  thin: 0.5,
  around: 0.75,
  dashed: 0.6,
  measure: 0.4,
};

/** Dash and gap in points; an absent stroke is drawn through. */
export const strokeDashes: Readonly<Partial<Record<Stroke, readonly [number, number]>>> = {
  dashed: [4, 3],
  around: [6, 2],
};

export type Spot = { readonly x: number; readonly y: number };

/** `x` and `y` are the corner with the smallest of both. */
export type Box = Spot & { readonly width: number; readonly height: number };

type Drawn = {
  readonly stroke: Stroke;
  /** Marks of one name belong together; `null` belongs to nothing. */
  readonly group: string | null;
};

export type Mark =
  | (Drawn &
      Box & {
        readonly kind: "box";
        /** `mesh` is woven wire, `solid` a light tint. */
        readonly fill: "none" | "mesh" | "solid";
      })
  | (Drawn & {
      readonly kind: "line";
      readonly from: Spot;
      readonly to: Spot;
      readonly arrows: "none" | "end" | "both";
    })
  | (Drawn & { readonly kind: "circle"; readonly center: Spot; readonly radius: number })
  | {
      readonly kind: "words";
      readonly group: string | null;
      /** The middle of the words. */
      readonly center: Spot;
      readonly words: string;
      /** Points. */
      readonly size: number;
      /** Read from below, along a measure that stands upright. */
      readonly upright: boolean;
    };

export type Picture = {
  /** Points. */
  readonly width: number;
  readonly height: number;
  /** What is drawn later lies on top. */
  readonly marks: readonly Mark[];
  /** A few words, such as `Elevation of A-101`. */
  readonly title: string;
  /** What a person who cannot see it has to know. */
  readonly description: string;
};

/** The smallest box around all of `boxes`. @throws RangeError when there is none. */
export function boxAround(boxes: readonly Box[]): Box {
  if (boxes.length === 0) throw new RangeError("Nothing to draw a box around.");
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y, width, height } of boxes) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x + width);
    bottom = Math.max(bottom, y + height);
  }
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** Points between two wires of a mesh, and how strong each is. */
const meshGap = 9;
export const meshWidth = 0.3;
/** A mesh is only hinted at: more wires than this would hide what lies on it. */
const mostWires = 160;

/** The wires of a mesh in a box, both ways at 45 degrees, each cut at the box. */
export function meshWires({ x, y, width, height }: Box): readonly (readonly [Spot, Spot])[] {
  if (width <= 0 || height <= 0) return [];
  const gap = Math.max(meshGap, (2 * (width + height)) / mostWires);
  const wires: (readonly [Spot, Spot])[] = [];
  for (let start = gap; start < width + height; start += gap) {
    // A wire along which x + y stays the same, and its mirror image.
    const [low, high] = [Math.max(0, start - height), Math.min(width, start)];
    const [fromY, toY] = [y + start - low, y + start - high];
    for (const way of [
      [x + low, x + high],
      [x + width - low, x + width - high],
    ] as const) {
      wires.push([
        { x: way[0], y: fromY },
        { x: way[1], y: toY },
      ]);
    }
  }
  return wires;
}
