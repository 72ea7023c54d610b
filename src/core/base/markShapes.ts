/** The shapes behind a picture's marks, for hosts that draw them one by one. */
import {
  boxAround,
  meshWires,
  strokeWidths,
  type Box,
  type Mark,
  type Spot,
  type Stroke,
} from "./picture";

/** Marks that follow each other and belong to one group; the order of drawing stays. */
export type MarkRun = { readonly group: string | null; readonly marks: readonly Mark[] };

export function markRuns(marks: readonly Mark[]): readonly MarkRun[] {
  const runs: { readonly group: string | null; readonly marks: Mark[] }[] = [];
  for (const mark of marks) {
    const last = runs.at(-1);
    if (last?.group === mark.group) last.marks.push(mark);
    else runs.push({ group: mark.group, marks: [mark] });
  }
  return runs;
}

/** The box that a mark fills; words are taken as a point. */
export function markBox(mark: Mark): Box {
  switch (mark.kind) {
    case "box":
      return mark;
    case "line": {
      const { from, to } = mark;
      return boxAround([from, to].map((spot) => ({ ...spot, width: 0, height: 0 })));
    }
    case "circle": {
      const { center, radius } = mark;
      const side = 2 * radius;
      return { x: center.x - radius, y: center.y - radius, width: side, height: side };
    }
    case "words":
      return { ...mark.center, width: 0, height: 0 };
  }
}

/** The corners of each filled arrow head of a line, its tip first; longer for a stronger line. */
export function arrowHeads({
  from,
  to,
  arrows,
  stroke,
}: Extract<Mark, { readonly kind: "line" }>): readonly (readonly Spot[])[] {
  if (arrows === "none") return [];
  const heads = [arrowHead(from, to, stroke)];
  if (arrows === "both") heads.push(arrowHead(to, from, stroke));
  return heads.filter((corners) => corners.length > 0);
}

/** None where a line has no length and so no way. */
function arrowHead(from: Spot, to: Spot, stroke: Stroke): readonly Spot[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return [];
  const size = 3.5 + 2 * strokeWidths[stroke];
  const [alongX, alongY] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const back = { x: to.x - size * alongX, y: to.y - size * alongY };
  const side = { x: -alongY * size * 0.32, y: alongX * size * 0.32 };
  return [
    to,
    { x: back.x + side.x, y: back.y + side.y },
    { x: back.x - side.x, y: back.y - side.y },
  ];
}

/** The wires of a mesh as the data of an SVG path; the empty text where there are none. */
export const meshPath = (box: Box): string =>
  meshWires(box)
    .map(([from, to]) => `M${short(from.x)} ${short(from.y)}L${short(to.x)} ${short(to.y)}`)
    .join("");

/** A hundredth of a point is finer than any screen. */
export const short = (value: number): number => Math.round(value * 100) / 100;
