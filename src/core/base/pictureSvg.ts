/** A picture as SVG text: no scripts, no styles, no colours of its own. */
import {
  boxAround,
  meshWidth,
  meshWires,
  strokeDashes,
  strokeWidths,
  type Box,
  type Mark,
  type Picture,
  type Spot,
  type Stroke,
} from "./picture";

export type SvgWish = {
  /** What each group is called when the pointer rests on it. */
  readonly groupNames?: ReadonlyMap<string, string>;
  /** Ink and paper; the text's own colour on nothing unless it says otherwise. */
  readonly ink?: string;
};

/**
 * An `<svg>` element that grows with the place it is put in. Each group is a `<g data-place="…">`
 * with a name and an area that the pointer finds even between its lines.
 */
export function pictureSvg(picture: Picture, wish: SvgWish = {}): string {
  const { width, height, marks, title, description } = picture;
  const { ink = "currentColor", groupNames = new Map<string, string>() } = wish;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${short(width)} ${short(height)}" width="${short(width)}" height="${short(height)}" role="img" aria-label="${escapeSvg(title)}" fill="none" stroke="${escapeSvg(ink)}" stroke-linecap="round" stroke-linejoin="round">`,
    `<title>${escapeSvg(title)}</title><desc>${escapeSvg(description)}</desc>`,
    ...grouped(marks).map(({ group, marks: drawn }) => {
      const shapes = drawn.map((mark) => markSvg(mark, ink)).join("");
      if (group === null) return shapes;
      const name = groupNames.get(group);
      const said = name === undefined ? "" : `<title>${escapeSvg(name)}</title>`;
      return `<g data-place="${escapeSvg(group)}">${said}${areaSvg(drawn)}${shapes}</g>`;
    }),
    "</svg>",
  ].join("");
}

type Run = { readonly group: string | null; readonly marks: Mark[] };

/** Neighbours of one group together; the order of drawing stays. */
function grouped(marks: readonly Mark[]): readonly Run[] {
  const runs: Run[] = [];
  for (const mark of marks) {
    const last = runs.at(-1);
    if (last?.group === mark.group) last.marks.push(mark);
    else runs.push({ group: mark.group, marks: [mark] });
  }
  return runs;
}

/** Points around a small part in which the pointer still finds it. */
const reach = 1.5;

function areaSvg(marks: readonly Mark[]): string {
  const box = boxAround(marks.map(boxOf));
  const grown = {
    x: box.x - reach,
    y: box.y - reach,
    width: box.width + 2 * reach,
    height: box.height + 2 * reach,
  };
  return `<rect ${boxAttributes(grown)} stroke="none" pointer-events="all"/>`;
}

/** The box that a mark fills; words are taken as a point. */
function boxOf(mark: Mark): Box {
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

function markSvg(mark: Mark, ink: string): string {
  switch (mark.kind) {
    case "box": {
      const fill = mark.fill === "solid" ? ` fill="${escapeSvg(ink)}" fill-opacity="0.14"` : "";
      const mesh = mark.fill === "mesh" ? meshSvg(mark) : "";
      return `${mesh}<rect ${boxAttributes(mark)}${fill}${strokeAttributes(mark.stroke)}/>`;
    }
    case "line":
      return lineSvg(mark, ink);
    case "circle":
      return `<circle cx="${short(mark.center.x)}" cy="${short(mark.center.y)}" r="${short(mark.radius)}"${strokeAttributes(mark.stroke)}/>`;
    case "words": {
      const { x, y } = mark.center;
      const turn = mark.upright ? ` transform="rotate(-90 ${short(x)} ${short(y)})"` : "";
      return `<text x="${short(x)}" y="${short(y)}"${turn} font-size="${short(mark.size)}" font-family="sans-serif" text-anchor="middle" dominant-baseline="central" fill="${escapeSvg(ink)}" stroke="none">${escapeSvg(mark.words)}</text>`;
    }
  }
}

function lineSvg(mark: Extract<Mark, { readonly kind: "line" }>, ink: string): string {
  const { from, to, arrows, stroke } = mark;
  const line = `<line x1="${short(from.x)}" y1="${short(from.y)}" x2="${short(to.x)}" y2="${short(to.y)}"${strokeAttributes(stroke)}/>`;
  const heads =
    arrows === "none"
      ? []
      : arrows === "end"
        ? [[from, to]]
        : [
            [from, to],
            [to, from],
          ];
  return (
    line + heads.map(([start = from, end = to]) => arrowHeadSvg(start, end, stroke, ink)).join("")
  );
}

/** A filled head at `to`, longer for a stronger line. */
function arrowHeadSvg(from: Spot, to: Spot, stroke: Stroke, ink: string): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return "";
  const size = 3.5 + 2 * strokeWidths[stroke];
  const [alongX, alongY] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const back = { x: to.x - size * alongX, y: to.y - size * alongY };
  const side = { x: -alongY * size * 0.32, y: alongX * size * 0.32 };
  const corners = [
    to,
    { x: back.x + side.x, y: back.y + side.y },
    { x: back.x - side.x, y: back.y - side.y },
  ];
  const points = corners.map(({ x, y }) => `${short(x)},${short(y)}`).join(" ");
  return `<polygon points="${points}" fill="${escapeSvg(ink)}" stroke="none"/>`;
}

function meshSvg(box: Box): string {
  const wires = meshWires(box).map(
    ([from, to]) => `M${short(from.x)} ${short(from.y)}L${short(to.x)} ${short(to.y)}`,
  );
  return wires.length === 0
    ? ""
    : `<path d="${wires.join("")}" stroke-width="${meshWidth}" stroke-opacity="0.45"/>`;
}

const boxAttributes = ({ x, y, width, height }: Box): string =>
  `x="${short(x)}" y="${short(y)}" width="${short(Math.max(0, width))}" height="${short(Math.max(0, height))}"`;

function strokeAttributes(stroke: Stroke): string {
  const dash = strokeDashes[stroke];
  return ` stroke-width="${strokeWidths[stroke]}"${dash === undefined ? "" : ` stroke-dasharray="${dash.join(" ")}"`}`;
}

/** A hundredth of a point is finer than any printer. */
const short = (value: number): string => String(Math.round(value * 100) / 100);

/** Text for an attribute or an element. What XML cannot hold is left out. */
const escapeSvg = (text: string): string =>
  text
    .replace(/[^\P{Cc}\t\n]|\p{Cs}|[\ufffe\uffff]/gu, "")
    .replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);
