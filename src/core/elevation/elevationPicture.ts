/** An elevation scaled to a place on paper or on a screen, with its measures written beside it. */
import {
  boxAround,
  type Box,
  type Mark,
  type Picture,
  type Spot,
  type Stroke,
} from "../base/picture";
import { textWidth } from "../base/textWidth";
import type { ShowLength } from "../takeoff/describe";
import type { Elevation, Measure, Shape, Surrounding } from "./elevation";
import { elevationTitle, elevationWords } from "./elevationWords";
import { outlineBox } from "./outlineBox";
import type { PartKind } from "./partKinds";

/** The largest it may become, in points, and the size of its letters. */
export type Frame = {
  readonly width: number;
  readonly height: number;
  readonly letters: number;
};

/** For a sheet of paper or a wide screen. */
export const paperFrame: Frame = { width: 560, height: 205, letters: 8 };

/** For a pane at its narrowest, in CSS pixels. */
export const paneFrame: Frame = { width: 294, height: 250, letters: 12 };

/** The picture, as large as the frame allows; lengths are written with `show`. */
export function elevationPicture(
  elevation: Elevation,
  show: ShowLength,
  frame: Frame = paperFrame,
): Picture {
  const bounds = boxAround(elevation.shapes.map(({ outline }) => outlineBox(outline)));
  let levels: Levels = { above: 0, below: 0, left: 0, right: 0 };
  let placed = placeMeasures(elevation.measures, show, frame.letters, 1);
  let fit = fitting(bounds, levels, frame);
  // Letters keep their size while the scale changes, so what fits on one level is found in turns.
  for (let turn = 0; turn < 4 && !sameLevels(placed.levels, levels); turn += 1) {
    levels = placed.levels;
    fit = fitting(bounds, levels, frame);
    placed = placeMeasures(elevation.measures, show, frame.letters, fit.scale);
  }
  const at = ({ x, y }: Spot): Spot => ({
    x: fit.left + (x - bounds.x) * fit.scale,
    y: fit.top + (bounds.y + bounds.height - y) * fit.scale,
  });
  return {
    width: fit.width,
    height: fit.height,
    marks: [
      ...elevation.shapes.map((shape) => shapeMark(shape, at, fit.scale)),
      ...placed.measures.flatMap((measure) =>
        measureMarks(measure, at, bounds, fit, frame.letters),
      ),
    ],
    title: elevationTitle(elevation),
    description: elevationWords(elevation, show),
  };
}

/** How many measures lie one behind the other on each side. */
type Levels = Readonly<Record<Measure["side"], number>>;

const sameLevels = (one: Levels, other: Levels): boolean =>
  one.above === other.above &&
  one.below === other.below &&
  one.left === other.left &&
  one.right === other.right;

type Fit = {
  /** Points to the inch. */
  readonly scale: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
};

const edge = 4;
/** Letters' heights from one level of measures to the next. */
const levelHeight = 1.9;

function fitting(bounds: Box, levels: Levels, { width, height, letters }: Frame): Fit {
  const room = (count: number): number => edge + count * levelHeight * letters;
  const [left, right] = [room(levels.left), room(levels.right)];
  const [top, bottom] = [room(levels.above), room(levels.below)];
  const scale = Math.max(
    1e-6,
    Math.min(
      (width - left - right) / Math.max(1, bounds.width),
      (height - top - bottom) / Math.max(1, bounds.height),
    ),
  );
  return {
    scale,
    left,
    top,
    width: left + bounds.width * scale + right,
    height: top + bounds.height * scale + bottom,
  };
}

/** Measures that meet end to end are beside each other, whatever the last digit says. */
const touching = 0.01;

type PlacedMeasure = Measure & { readonly words: string; readonly at: number };

/** The levels that each side uses, counted without the empty ones between them. */
function ranksOf(measures: readonly Measure[]): ReadonlyMap<Measure, number> {
  return new Map(
    measures.map((measure) => {
      const inside = measures.filter(
        ({ side, level }) => side === measure.side && level < measure.level,
      );
      return [measure, new Set(inside.map(({ level }) => level)).size];
    }),
  );
}

/** Each measure on the first level from its own on where its words meet no others. */
function placeMeasures(
  measures: readonly Measure[],
  show: ShowLength,
  letters: number,
  scale: number,
): { readonly measures: readonly PlacedMeasure[]; readonly levels: Levels } {
  const taken = new Map<string, { from: number; to: number }[]>();
  const levels = { above: 0, below: 0, left: 0, right: 0 };
  const ranks = ranksOf(measures);
  const placed = measures.map((measure): PlacedMeasure => {
    const { side, from, to, name, length } = measure;
    const words = `${name} ${show(length)}`;
    const middle = ((from + to) / 2) * scale;
    const half = Math.max((Math.abs(to - from) * scale) / 2, textWidth(words, letters) / 2 + 2);
    let at = ranks.get(measure) ?? 0;
    const key = (): string => `${side} ${at}`;
    const isFree = (): boolean =>
      (taken.get(key()) ?? []).every(
        (other) => middle + half <= other.from + touching || middle - half >= other.to - touching,
      );
    while (!isFree()) at += 1;
    taken.set(key(), [...(taken.get(key()) ?? []), { from: middle - half, to: middle + half }]);
    levels[side] = Math.max(levels[side], at + 1);
    return { ...measure, words, at };
  });
  return { measures: placed, levels };
}

const partStrokes: Readonly<Partial<Record<PartKind | Surrounding, Stroke>>> = {
  floor: "heavy",
  post: "around",
  transom: "dashed",
  opening: "around",
  joint: "thin",
  travel: "heavy",
  swing: "dashed",
  "tail run": "around",
  panel: "part",
  track: "part",
  jamb: "part",
  hingeJamb: "part",
  stile: "part",
  meetingStile: "part",
};

const meshed: ReadonlySet<string> = new Set(["panel", "transom"]);
const tinted: ReadonlySet<string> = new Set([
  "jamb",
  "hingeJamb",
  "track",
  "stile",
  "meetingStile",
  "splice",
  "angle",
  "guide",
  "frame",
  "shelf",
]);

function shapeMark({ kind, outline, place }: Shape, at: (spot: Spot) => Spot, scale: number): Mark {
  const stroke = partStrokes[kind] ?? "thin";
  const drawn = { stroke, group: place };
  switch (outline.form) {
    case "box": {
      const { x, y } = at({ x: outline.x, y: outline.y + outline.height });
      const size = { width: outline.width * scale, height: outline.height * scale };
      const fill = meshed.has(kind) ? "mesh" : tinted.has(kind) ? "solid" : "none";
      return { ...drawn, kind: "box", x, y, ...size, fill };
    }
    case "line": {
      const arrows = kind === "travel" ? "end" : "none";
      return { ...drawn, kind: "line", from: at(outline.from), to: at(outline.to), arrows };
    }
    case "circle":
      return {
        ...drawn,
        kind: "circle",
        center: at(outline.center),
        radius: outline.radius * scale,
      };
  }
}

/** Points below which two arrow heads would run into each other. */
const shortest = 14;

/** The line with its arrows, a tick at each end, and its words on it. */
function measureMarks(
  measure: PlacedMeasure,
  at: (spot: Spot) => Spot,
  bounds: Box,
  fit: Fit,
  letters: number,
): readonly Mark[] {
  const { side, from, to, words, isCut } = measure;
  const isAcross = side === "above" || side === "below";
  const out = edge + (measure.at + 0.85) * levelHeight * letters;
  const corner = at({ x: bounds.x, y: bounds.y });
  const opposite = at({ x: bounds.x + bounds.width, y: bounds.y + bounds.height });
  const beside = {
    below: corner.y + out - edge,
    above: opposite.y - out + edge + letters,
    left: corner.x - out + edge + letters,
    right: opposite.x + out - edge,
  }[side];
  const spot = (along: number): Spot =>
    isAcross
      ? { x: at({ x: along, y: 0 }).x, y: beside }
      : { x: beside, y: at({ x: 0, y: along }).y };
  const [start, end] = [spot(from), spot(to)];
  const tick = ({ x, y }: Spot): Mark => ({
    kind: "line",
    stroke: "measure",
    group: null,
    from: isAcross ? { x, y: y - 2.5 } : { x: x - 2.5, y },
    to: isAcross ? { x, y: y + 2.5 } : { x: x + 2.5, y },
    arrows: "none",
  });
  const isShort = Math.abs(end.x - start.x) + Math.abs(end.y - start.y) < shortest;
  const half = textWidth(words, letters) / 2 + 1;
  const within = (along: number, size: number): number =>
    Math.max(half, Math.min(along, size - half));
  const middle = isAcross
    ? { x: within((start.x + end.x) / 2, fit.width), y: start.y }
    : { x: start.x, y: within((start.y + end.y) / 2, fit.height) };
  const lift = letters * 0.62;
  return [
    {
      kind: "line",
      stroke: "measure",
      group: null,
      from: start,
      to: end,
      arrows: isShort ? "none" : isCut ? "end" : "both",
    },
    tick(start),
    ...(isCut ? [] : [tick(end)]),
    {
      kind: "words",
      group: null,
      center: isAcross ? { x: middle.x, y: middle.y - lift } : { x: middle.x - lift, y: middle.y },
      words,
      size: letters,
      upright: !isAcross,
    },
  ];
}
