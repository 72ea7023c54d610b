/**
 * The loads of each opening whose leaves hang from a track, held against what the firm entered from
 * its supplier. Checks, never a design.
 */
import { openingCounts, type OpeningCounts } from "../bags/openingCounts";
import { makeFinding, type Finding } from "../base/finding";
import { inches, pounds, type Pounds } from "../base/units";
import type { Opening } from "../openings/opening";
import type { JobTakeOff } from "../takeoff/takeOff";
import { hungLeaves, type HungLeaves, type PanelMake } from "./hungLeaf";
import type { Items } from "./item";
import { weighParts, type WeighedParts } from "./leafWeight";
import { checkLoads, type CheckedLoads, type LoadCapacities } from "./loadCheck";
import { loadFindings } from "./loadFindings";
import type { RateReader } from "./rates";
import { trackLoads, type HungLeaf, type LeafFault, type TrackLoads } from "./trackLoads";

export type LoadRules = {
  readonly capacities: LoadCapacities;
  /** `null` weighs panels by their item. */
  readonly panels: PanelMake | null;
  /** `null` weighs the track by its item. */
  readonly trackPerFoot: number | null;
  readonly inertia: number | null;
  readonly jolt: number;
  /** Inches; `null` is a quarter of the leaf. */
  readonly trolleyFromEdge: number | null;
};

export type OpeningLoads = {
  readonly opening: Opening;
  readonly leaves: number;
  /** The parts of all leaves of one opening. */
  readonly parts: WeighedParts;
  /** Of one leaf; `null` where a part has no weight. */
  readonly leafWeight: Pounds | null;
  /** `null` where they cannot be worked out. */
  readonly loads: TrackLoads | null;
  readonly checked: CheckedLoads;
};

export type JobLoads = {
  readonly job: string;
  readonly capacities: LoadCapacities;
  readonly openings: readonly OpeningLoads[];
  readonly findings: readonly Finding[];
};

/** What was entered for a job. Blank is `null`: not checked, or as the items say. */
export function loadRules(read: RateReader): LoadRules {
  const weight = (key: Parameters<RateReader["number"]>[0]): Pounds | null => {
    const value = read.number(key);
    return value === null ? null : pounds(value);
  };
  const [opening, wire] = [read.number("meshOpening"), read.number("meshWire")];
  const frame = read.number("frameWeight");
  const sinksOver = read.number("sinksOver");
  const inertia = read.number("trackInertia");
  return {
    capacities: {
      trolley: weight("trolleyCarries"),
      hanger: weight("hangerCarries"),
      track: read.number("trackBends"),
      joint: read.number("jointBends"),
      deflectionOver: sinksOver === 0 ? null : sinksOver,
    },
    panels:
      opening === null || wire === null || frame === null || opening + wire === 0
        ? null
        : { mesh: { opening: inches(opening), wire: inches(wire) }, framePerFoot: frame },
    trackPerFoot: read.number("trackWeight"),
    inertia: inertia === 0 ? null : inertia,
    jolt: read.number("jolt") ?? 1,
    trolleyFromEdge: read.number("trolleyFromEdge"),
  };
}

/**
 * Every counted opening of a job that has trolleys. Where no capacity at all is entered nothing is
 * checked, and one note says so for the job.
 */
export function jobLoads(takeOff: JobTakeOff, items: Items, rules: LoadRules): JobLoads {
  const { job } = takeOff;
  const { capacities } = rules;
  const openings = openingCounts(takeOff).flatMap((counts) => loadsOf(counts, items, rules));
  if (Object.values(capacities).some((capacity) => capacity !== null)) {
    const findings = openings.flatMap(({ opening, checked }) =>
      checked.findings.map((finding) => ({ ...finding, place: opening.place })),
    );
    return { job, capacities, openings, findings };
  }
  const values = { count: openings.length };
  return {
    job,
    capacities,
    openings: openings.map((one) => ({
      ...one,
      checked: { ...one.checked, verdict: "not checked", findings: [] },
    })),
    findings:
      openings.length === 0 ? [] : [makeFinding(loadFindings, "no-capacities", { job, values })],
  };
}

function loadsOf(counts: OpeningCounts, items: Items, rules: LoadRules): readonly OpeningLoads[] {
  const hung = hungLeaves(counts, items, rules.panels);
  if (hung === null) return [];
  const { opening } = counts;
  const leaves = hung.places.leaves.length;
  const parts = weighParts(hung.parts);
  const leafWeight = parts.notWeighed.length > 0 ? null : pounds(parts.weight / leaves);
  const loads = leafWeight === null ? null : loadsAlong(hung, leafWeight, rules);
  const checked = checkLoads(loads, rules.capacities, opening);
  const known = loads === null || "code" in loads ? null : loads;
  return [{ opening, leaves, parts, leafWeight, loads: known, checked }];
}

/** `null` where a leaf has not two trolleys, or the track fewer than two hangers. */
function loadsAlong(
  { places, trackPerFoot }: HungLeaves,
  weight: Pounds,
  rules: LoadRules,
): TrackLoads | LeafFault | null {
  const { leaves, trackStart, trackEnd, hangers, joints, trolleys } = places;
  if (hangers.length < 2) return null;
  const hung: HungLeaf[] = [];
  for (const [index, { left, right, tail }] of leaves.entries()) {
    const [first, second, ...more] = trolleys[index] ?? [];
    if (first === undefined || second === undefined || more.length > 0) return null;
    const width = right - left;
    const edge = rules.trolleyFromEdge;
    hung.push({
      weight,
      width: inches(width),
      trolleys:
        edge === null
          ? [inches(first - left), inches(second - left)]
          : [inches(edge), inches(width - edge)],
      closed: inches(left),
      open: inches(tail === "right" ? trackEnd - width : trackStart),
    });
  }
  const made = trackLoads(hung, {
    hangers: hangers.map(inches),
    joints: joints.map(inches),
    weightPerFoot: rules.trackPerFoot ?? trackPerFoot,
    inertia: rules.inertia,
    jolt: rules.jolt,
  });
  return made.ok ? made.value : made.error;
}
