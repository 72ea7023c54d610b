/** The places of a picture as boxes: which is pointed at, and which comes next by keyboard. */
import { markBox, markRuns, type MarkRun } from "../../core/base/markShapes";
import { boxAround, type Box, type Picture, type Spot } from "../../core/base/picture";

export type DrawnPlace = MarkRun & { readonly group: string; readonly box: Box };

/** A picture in its order of drawing: what lies under the places, the places, what lies over them. */
export type LayeredPicture = {
  readonly under: readonly MarkRun[];
  readonly places: readonly DrawnPlace[];
  readonly over: readonly MarkRun[];
};

export function layersOf({ marks }: Picture): LayeredPicture {
  const runs = markRuns(marks);
  const places = runs.flatMap((run): DrawnPlace[] =>
    run.group === null
      ? []
      : [{ ...run, group: run.group, box: boxAround(run.marks.map(markBox)) }],
  );
  const isPlace = ({ group }: MarkRun): boolean => group !== null;
  const first = runs.findIndex(isPlace);
  const end = first < 0 ? runs.length : first;
  return {
    under: runs.slice(0, end),
    places,
    over: runs.slice(end).filter((run) => !isPlace(run)),
  };
}

/**
 * The place at a spot. A small part within `reach` comes before the large one that it sits on, the
 * nearest first; else the smallest that has the spot in it; else the nearest within reach.
 */
export function placeAt(places: readonly DrawnPlace[], spot: Spot, reach: number): string | null {
  const near = places.filter(({ box }) => distance(box, spot) <= reach);
  const small = near.filter(({ box }) => box.width <= 2 * reach && box.height <= 2 * reach);
  const bySize = (one: DrawnPlace, other: DrawnPlace): number =>
    areaOf(one.box) - areaOf(other.box);
  const byMiddle = (one: DrawnPlace, other: DrawnPlace): number =>
    fromMiddle(one.box, spot) - fromMiddle(other.box, spot);
  const byDistance = (one: DrawnPlace, other: DrawnPlace): number =>
    distance(one.box, spot) - distance(other.box, spot);
  const [found] =
    small.length > 0
      ? small.sort(byMiddle)
      : near.sort((one, other) => byDistance(one, other) || bySize(one, other));
  return found?.group ?? null;
}

const areaOf = ({ width, height }: Box): number => width * height;

const distance = ({ x, y, width, height }: Box, spot: Spot): number =>
  Math.hypot(
    Math.max(x - spot.x, 0, spot.x - x - width),
    Math.max(y - spot.y, 0, spot.y - y - height),
  );

const middleOf = ({ x, y, width, height }: Box): Spot => ({ x: x + width / 2, y: y + height / 2 });

function fromMiddle(box: Box, spot: Spot): number {
  const middle = middleOf(box);
  return Math.hypot(middle.x - spot.x, middle.y - spot.y);
}

/**
 * The place that a key goes to from the place `from`: left and right go through all places from left
 * to right, up and down through all of them from top to bottom, Home and End to the ends. `null` for
 * any other key, and at the end of the way.
 */
export function placeAfterKey(
  places: readonly DrawnPlace[],
  from: string,
  key: string,
): string | null {
  const isAcross = key === "ArrowRight" || key === "ArrowLeft" || key === "Home" || key === "End";
  const ordered = isAcross ? across(places) : down(places);
  const at = ordered.indexOf(from);
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: at + 1,
    ArrowDown: at + 1,
    ArrowLeft: at - 1,
    ArrowUp: at - 1,
    Home: 0,
    End: ordered.length - 1,
  };
  return ordered[steps[key] ?? -1] ?? null;
}

/** All places from left to right, those in a column from top to bottom. */
export const across = (places: readonly DrawnPlace[]): readonly string[] =>
  sorted(places, ({ x, y }) => [x, y]);

const down = (places: readonly DrawnPlace[]): readonly string[] =>
  sorted(places, ({ x, y }) => [y, x]);

const sorted = (
  places: readonly DrawnPlace[],
  keys: (middle: Spot) => readonly [number, number],
): readonly string[] =>
  places
    .map(({ group, box }) => ({ group, keys: keys(middleOf(box)).map(Math.round) }))
    .sort(({ keys: [a = 0, b = 0] }, { keys: [c = 0, d = 0] }) => a - c || b - d)
    .map(({ group }) => group);
