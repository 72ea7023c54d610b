/**
 * From an opening's leaves and track to the load on each trolley and hanger, and to bending and
 * deflection of each span and joint. Figures only: `loadCheck.ts` holds them against capacities.
 */
import { err, ok, type Result } from "../../base/result";
import { inches, pounds, type Inches, type Pounds } from "../../base/units";
import {
  hangerLoad,
  largestDeflection,
  largestMoment,
  momentAt,
  travelBeyond,
  type InchPounds,
  type MovingLeaf,
  type Span,
} from "./movingLoads";

/** Steel: E = 29,000,000 psi. Source: AISC 360, symbols and glossary of constants. */
export const steelModulus = 29_000_000;

/** A leaf as it hangs. Lengths along the leaf are from its edge with the smaller position. */
export type HungLeaf = {
  readonly weight: Pounds;
  readonly width: Inches;
  /** From the edge to the first trolley, and to the second. */
  readonly trolleys: readonly [Inches, Inches];
  /** From the edge to the centre of gravity; the middle of the leaf where absent. */
  readonly centre?: Inches;
  /** Where the edge stands along the track when the door is closed, and when it is open. */
  readonly closed: Inches;
  readonly open: Inches;
};

/** A track on its hangers. Positions are inches along it from any one zero. */
export type HungTrack = {
  /** In any order; a place named twice counts once. */
  readonly hangers: readonly Inches[];
  readonly joints: readonly Inches[];
  /** Pounds per foot of the track itself; `null` leaves its weight out. */
  readonly weightPerFoot: number | null;
  /** Moment of inertia about the bending axis, in^4, from the supplier; `null` leaves deflection out. */
  readonly inertia: number | null;
  /** Psi; `steelModulus` where absent. */
  readonly modulus?: number;
  /** Times every trolley load, for jolts: the firm's own figure, 1 for a leaf that hangs still. */
  readonly jolt: number;
};

export type TrolleyLoad = {
  /** Which leaf, from 1, and which of its trolleys. */
  readonly leaf: number;
  readonly trolley: 1 | 2;
  readonly load: Pounds;
};
export type HangerLoad = { readonly at: Inches; readonly load: Pounds };
export type SpanLoad = Span & {
  readonly moment: InchPounds;
  /** At mid-span, inches; `null` where the track's inertia is not given. */
  readonly deflection: number | null;
};
export type JointLoad = {
  readonly at: Inches;
  /** `null` where no span holds the joint. */
  readonly moment: InchPounds | null;
};

export type TrackLoads = {
  readonly trolleys: readonly TrolleyLoad[];
  readonly hangers: readonly HangerLoad[];
  readonly spans: readonly SpanLoad[];
  readonly joints: readonly JointLoad[];
  /** Inches that a trolley runs past the outermost hanger, where nothing carries the track. */
  readonly beyond: number;
};

/** `tips`: the centre of gravity is not between the trolleys, so one of them would lift. */
export type LeafFault = { readonly code: "leaf-tips"; readonly leaf: number };

/**
 * The weight on the leaf's first and second trolley, by levers about each other.
 * `leaf` is its number, for the fault.
 */
export function trolleyLoads(
  hung: HungLeaf,
  leaf: number,
): Result<readonly [Pounds, Pounds], LeafFault> {
  const [first, second] = hung.trolleys;
  const centre = hung.centre ?? hung.width / 2;
  if (!(first <= centre && centre <= second && first < second)) {
    return err({ code: "leaf-tips", leaf });
  }
  const onSecond = (hung.weight * (centre - first)) / (second - first);
  return ok([pounds(Math.max(0, hung.weight - onSecond)), pounds(onSecond)]);
}

function movingLeaf(hung: HungLeaf, loads: readonly [Pounds, Pounds], jolt: number): MovingLeaf {
  const [first, second] = hung.trolleys;
  return {
    loads: [pounds(loads[0] * jolt), pounds(loads[1] * jolt)],
    spacing: inches(second - first),
    from: inches(Math.min(hung.closed, hung.open) + first),
    to: inches(Math.max(hung.closed, hung.open) + first),
  };
}

/**
 * Every load of one opening. Several leaves travel by themselves, so each figure is the sum of the
 * worst of each leaf; the track's own weight is added at its own worst, which errs to the high side.
 */
export function trackLoads(
  leaves: readonly HungLeaf[],
  track: HungTrack,
): Result<TrackLoads, LeafFault> {
  const trolleys: TrolleyLoad[] = [];
  const moving: MovingLeaf[] = [];
  for (const [index, hung] of leaves.entries()) {
    const loads = trolleyLoads(hung, index + 1);
    if (!loads.ok) return loads;
    const leaf = movingLeaf(hung, loads.value, track.jolt);
    moving.push(leaf);
    trolleys.push({ leaf: index + 1, trolley: 1, load: leaf.loads[0] });
    trolleys.push({ leaf: index + 1, trolley: 2, load: leaf.loads[1] });
  }
  const total = (of: (leaf: MovingLeaf) => number): number =>
    moving.reduce((sum, leaf) => sum + of(leaf), 0);
  const hangers = [...new Set(track.hangers)].sort((a, b) => a - b);
  const spans = hangers.slice(1).map((to, index): Span => ({ from: hangers[index] ?? to, to }));
  const perInch = (track.weightPerFoot ?? 0) / 12;
  const stiffness = track.inertia === null ? null : (track.modulus ?? steelModulus) * track.inertia;

  return ok({
    trolleys,
    hangers: hangers.map((at, index) => {
      const beside = (hangers[index + 1] ?? at) - (hangers[index - 1] ?? at);
      const moved = total((leaf) => hangerLoad(leaf, hangers, index));
      return { at, load: pounds(moved + (perInch * beside) / 2) };
    }),
    spans: spans.map((span) => ({
      ...span,
      moment:
        total((leaf) => largestMoment(leaf, span)) + (perInch * (span.to - span.from) ** 2) / 8,
      deflection:
        stiffness === null
          ? null
          : total((leaf) => largestDeflection(leaf, span, stiffness)) +
            (5 * perInch * (span.to - span.from) ** 4) / (384 * stiffness),
    })),
    joints: track.joints.map((at) => {
      const span = spans.find(({ from, to }) => from <= at && at <= to);
      if (span === undefined) return { at, moment: null };
      const own = (perInch * (at - span.from) * (span.to - at)) / 2;
      return { at, moment: total((leaf) => momentAt(leaf, span, at)) + own };
    }),
    beyond: Math.max(0, ...moving.map((leaf) => travelBeyond(leaf, hangers))),
  });
}
