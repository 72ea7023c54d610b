/** The mirror image of an elevation: a left hand of a right one, and the other way round. */
import type { Spot } from "../base/picture";
import type { Elevation, Measure, Outline } from "./elevation";

const otherSide = { left: "right", right: "left", above: "above", below: "below" } as const;

/** Left and right exchanged, about x = 0. Mirrored twice it is as it was, save for the last digit. */
export const mirrored = (elevation: Elevation): Elevation => ({
  ...elevation,
  hand: otherSide[elevation.hand],
  shapes: elevation.shapes.map((shape) => ({ ...shape, outline: mirroredOutline(shape.outline) })),
  measures: elevation.measures.map(mirroredMeasure),
});

const mirroredSpot = ({ x, y }: Spot): Spot => ({ x: 0 - x, y });

function mirroredOutline(outline: Outline): Outline {
  switch (outline.form) {
    case "box":
      return { ...outline, x: 0 - (outline.x + outline.width) };
    case "line":
      return { ...outline, from: mirroredSpot(outline.from), to: mirroredSpot(outline.to) };
    case "circle":
      return { ...outline, center: mirroredSpot(outline.center) };
  }
}

function mirroredMeasure(measure: Measure): Measure {
  const { side, from, to } = measure;
  if (side === "left" || side === "right") return { ...measure, side: otherSide[side] };
  return { ...measure, from: 0 - from, to: 0 - to };
}
