/**
 * The loads of each opening whose leaves hang from a track, held against what the firm entered from
 * its supplier. Checks, never a design.
 */
import { openingCountsSteps, type OpeningCounts } from "../../bags/openingCounts";
import { makeFinding, type Finding } from "../../base/finding";
import { between, finish, type Steps } from "../../base/steps";
import { inches, pounds, type Pounds } from "../../base/units";
import type { MeasureStyle } from "../../measures/measures";
import type { OpeningType } from "../../kitbook/kitBook";
import type { Opening } from "../../openings/opening";
import { valueAt, type Take } from "../../takeoff/take";
import type { JobTakeOff } from "../../takeoff/takeOff";
import { loadsKeeper } from "./keptLoads";
import { hungLeaves, type HungLeaves, type PanelMake } from "./hungLeaf";
import type { Items } from "../item";
import { weighParts, type WeighedParts } from "./leafWeight";
import { checkLoads, type CheckedLoads, type LoadCapacities } from "./loadCheck";
import { loadFindings } from "./loadFindings";
import type { RateReader } from "../rates/rates";
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
  /** How words about loads write them. */
  readonly style: MeasureStyle;
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
export function loadRules(read: RateReader, style: MeasureStyle = "pounds"): LoadRules {
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
    style,
  };
}

/**
 * Every counted opening of a job that has trolleys. Where no capacity at all is entered nothing is
 * checked, and one note says so for the job.
 */
export const jobLoads = (takeOff: JobTakeOff, items: Items, rules: LoadRules): JobLoads =>
  finish(jobLoadsSteps(takeOff, items, rules));

/** Whether there is anything to hold a load against. */
export const isAnyEntered = ({ capacities }: LoadRules): boolean =>
  Object.values(capacities).some((capacity) => capacity !== null);

const knownLoads = loadsKeeper<OpeningLoads>();

/** Openings of one step, most of which are like one before. */
const slice = 20;

/** The same in short steps. */
export function* jobLoadsSteps(
  takeOff: JobTakeOff,
  items: Items,
  rules: LoadRules,
): Steps<JobLoads> {
  const { job } = takeOff;
  const { capacities } = rules;
  const hung = hangingLoads(items, rules);
  const { known, rest, keep } = knownLoads(takeOff, items, JSON.stringify(rules));
  const counts = yield* between(0, 0.5, openingCountsSteps(rest));
  const all = new Map(known);
  const made = new Map<Take, Map<Opening, OpeningLoads>>();
  for (const [index, each] of counts.entries()) {
    if (index % slice === 0) yield 0.5 + index / counts.length / 2;
    const found = hung(each);
    if (found === null) continue;
    const { opening, take } = each;
    const checked = checkLoads(found.along, capacities, opening, rules.style);
    const { leaves, parts, leafWeight, loads } = found;
    const ofOpening = { opening, leaves, parts, leafWeight, loads, checked };
    all.set(opening, ofOpening);
    made.set(take, (made.get(take) ?? new Map<Opening, OpeningLoads>()).set(opening, ofOpening));
  }
  keep(made);
  const openings = takeOff.openings.flatMap((opening) => all.get(opening) ?? []);
  if (isAnyEntered(rules)) {
    const findings = openings.flatMap(({ opening, checked }) =>
      checked.findings.map((finding) => ({ ...finding, place: opening.place })),
    );
    return { job, capacities, openings, findings };
  }
  const values = { job, count: openings.length };
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

type Hanging = Omit<OpeningLoads, "opening" | "checked"> & {
  readonly along: TrackLoads | LeafFault | null;
};

type Known = { readonly items: Items; readonly hanging: Map<string, Hanging | null> };
const knownOfType = new WeakMap<OpeningType, Known>();

/** What hangs in an opening, worked out once for all that are alike; `null` where nothing does. */
function hangingLoads(items: Items, rules: LoadRules): (counts: OpeningCounts) => Hanging | null {
  const entered = JSON.stringify(rules);
  return (counts) => {
    const { type } = counts.take;
    let known = knownOfType.get(type);
    if (known?.items !== items) knownOfType.set(type, (known = { items, hanging: new Map() }));
    const key = `${entered}\n${likeness(counts)}`;
    const before = known.hanging.get(key);
    if (before !== undefined) return before;
    const made = hangingOf(counts, items, rules);
    known.hanging.set(key, made);
    return made;
  };
}

/** The same for openings of one type that have the same sizes and pieces, and so the same loads. */
const likeness = ({ opening, take, row, pieces }: OpeningCounts): string =>
  JSON.stringify([
    hungFields.map((name) => opening.fields[name] ?? null),
    take.type.sizes.map(({ slot }) => valueAt(take, slot, row)),
    pieces.map(({ count, item, size }) => [count.part.source.number, count.each, item, size]),
  ]);

/** The fields that places along a track are worked out from, besides the kit book's sizes. */
const hungFields = [
  "width",
  "height",
  "post_height",
  "tail_run",
  "tail_post",
  "transom",
  "transom_height",
] as const;

function hangingOf(counts: OpeningCounts, items: Items, rules: LoadRules): Hanging | null {
  const hung = hungLeaves(counts, items, rules.panels);
  if (hung === null) return null;
  const leaves = hung.places.leaves.length;
  const parts = weighParts(hung.parts, rules.style);
  const leafWeight = parts.notWeighed.length > 0 ? null : pounds(parts.weight / leaves);
  const along = leafWeight === null ? null : loadsAlong(hung, leafWeight, rules);
  return {
    leaves,
    parts,
    leafWeight,
    along,
    loads: along === null || "code" in along ? null : along,
  };
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
