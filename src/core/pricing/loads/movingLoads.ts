/**
 * What a track feels while a leaf travels along it: hanger loads, bending and deflection.
 *
 * The track over several hangers is taken as simple spans, each from one hanger to the next, as if
 * it were cut at every hanger. That is the same for a track with a joint at each hanger; one that
 * runs through loads an inner hanger and bends between them somewhat otherwise, so this is a check
 * of entered capacities and never a design. A leaf's trolleys are point loads a fixed distance
 * apart. All maxima are exact: the influence lines are straight between the places where a load
 * passes a hanger (or the section looked at), and moments under a load are parabolas in between.
 *
 * Sources: AISC Steel Construction Manual, Table 3-23, simple beams with moving concentrated loads
 * and general rules for them (value from memory); influence lines as in any text on structures.
 */
import type { Inches, Pounds } from "../../base/units";

/** Pound-inches of bending moment; positive bends the track down between its hangers. */
export type InchPounds = number;

/** One leaf on its two trolleys. Positions are inches along the track from any one zero. */
export type MovingLeaf = {
  /** On the trolley with the smaller position, then on the other. */
  readonly loads: readonly [Pounds, Pounds];
  /** From the first trolley to the second; more than zero. */
  readonly spacing: Inches;
  /** The first trolley travels from here ... */
  readonly from: Inches;
  /** ... to here, which is not before `from`. */
  readonly to: Inches;
};

/** A piece of track between two neighbouring hangers. */
export type Span = { readonly from: Inches; readonly to: Inches };

/** The value at `x` of a line that is 0 at `left`, `peak` at `top`, 0 at `right`, and 0 outside. */
function triangle(x: number, left: number, top: number, right: number, peak: number): number {
  if (x < left || x > right) return 0;
  if (x === top) return peak;
  return x < top ? (peak * (x - left)) / (top - left) : (peak * (right - x)) / (right - top);
}

/** The first trolley's places where either trolley stands on one of `marks`, and both ends of travel. */
function placesOfNote(leaf: MovingLeaf, marks: readonly number[]): readonly number[] {
  const inTravel = (place: number): boolean => place >= leaf.from && place <= leaf.to;
  const passing = marks.flatMap((mark) => [mark, mark - leaf.spacing]).filter(inTravel);
  return [leaf.from, leaf.to, ...passing];
}

/** The most that both trolleys together ever do, where `influence` is straight between the `marks`. */
const mostOf = (
  leaf: MovingLeaf,
  marks: readonly number[],
  influence: (x: number) => number,
): number =>
  Math.max(
    0,
    ...placesOfNote(leaf, marks).map(
      (first) => leaf.loads[0] * influence(first) + leaf.loads[1] * influence(first + leaf.spacing),
    ),
  );

/**
 * The most one leaf ever puts on the hanger `hangers[index]`. Hangers ascend. A trolley beyond the
 * last hanger counts as nothing here: `travelBeyond` tells of it.
 */
export function hangerLoad(leaf: MovingLeaf, hangers: readonly Inches[], index: number): number {
  const at = hangers[index] ?? Number.NaN;
  const left = hangers[index - 1] ?? at;
  const right = hangers[index + 1] ?? at;
  return mostOf(leaf, [left, at, right], (x) => triangle(x, left, at, right, 1));
}

/** The most one leaf ever bends the track at the place `at` inside the span: a joint, say. */
export function momentAt(leaf: MovingLeaf, span: Span, at: Inches): InchPounds {
  const peak = ((at - span.from) * (span.to - at)) / (span.to - span.from);
  return mostOf(leaf, [span.from, at, span.to], (x) => triangle(x, span.from, at, span.to, peak));
}

/**
 * The most one leaf ever bends the track anywhere in the span.
 *
 * It is found under a trolley: with both trolleys in the span where mid-span lies half-way between
 * that trolley and the two loads' resultant, with one of them in the span where it stands at
 * mid-span, or where the travel or the span ends.
 */
export function largestMoment(leaf: MovingLeaf, span: Span): InchPounds {
  const [first, second] = leaf.loads;
  const both = first + second;
  if (both === 0) return 0;
  const middle = (span.from + span.to) / 2;
  const halfWay = [
    middle - (leaf.spacing * second) / both / 2,
    middle + (leaf.spacing * first) / both / 2 - leaf.spacing,
  ].filter((place) => place >= leaf.from && place <= leaf.to);
  const places = [...placesOfNote(leaf, [span.from, middle, span.to]), ...halfWay];
  const underTrolleys = places.flatMap((place) =>
    [place, place + leaf.spacing].map((under) => {
      if (under <= span.from || under >= span.to) return 0;
      const peak = ((under - span.from) * (span.to - under)) / (span.to - span.from);
      const influence = (x: number): number => triangle(x, span.from, under, span.to, peak);
      return first * influence(place) + second * influence(place + leaf.spacing);
    }),
  );
  return Math.max(0, ...underTrolleys);
}

/** How far any trolley of the leaf ever runs past the first or the last hanger; zero if never. */
export const travelBeyond = (leaf: MovingLeaf, hangers: readonly Inches[]): number =>
  hangers.length === 0
    ? leaf.to + leaf.spacing - leaf.from
    : Math.max(
        0,
        (hangers[0] ?? 0) - leaf.from,
        leaf.to + leaf.spacing - (hangers[hangers.length - 1] ?? 0),
      );

/**
 * The most the middle of the span ever sinks under one leaf, in inches.
 *
 * `stiffness` is E x I in lb sq in. Source: AISC Table 3-23, a concentrated load at any point: at
 * mid-span P x (3 l^2 - 4 x^2) / (48 E I), where x is from the nearer hanger. Away from mid-span a
 * track may sink a little more, up to about 2.6 % under one load (value from memory).
 */
export function largestDeflection(leaf: MovingLeaf, span: Span, stiffness: number): number {
  const length = span.to - span.from;
  const fromNearer = (x: number): number => Math.min(x - span.from, span.to - x);
  const sink = (x: number): number => {
    const near = fromNearer(x);
    return near <= 0 ? 0 : (near * (3 * length ** 2 - 4 * near ** 2)) / (48 * stiffness);
  };
  const total = (first: number): number =>
    leaf.loads[0] * sink(first) + leaf.loads[1] * sink(first + leaf.spacing);
  // Between the places where a trolley enters or leaves the span the curve is concave: halving finds its top.
  const places = [...new Set(placesOfNote(leaf, [span.from, span.to]))].sort((a, b) => a - b);
  const tops = places.slice(1).map((end, index) => total(topOf(total, places[index] ?? end, end)));
  return Math.max(0, ...places.map(total), ...tops);
}

/** Where a concave `curve` is highest between `low` and `high`, to about the twelfth digit. */
function topOf(curve: (x: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [from, to] = [low, high];
  for (let turn = 0; turn < 60; turn += 1) {
    const step = golden * (to - from);
    if (curve(to - step) < curve(from + step)) from = to - step;
    else to = from + step;
  }
  return (from + to) / 2;
}
