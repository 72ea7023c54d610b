/**
 * Holds the loads of one opening against the capacities that the firm entered from its supplier.
 * A check of figures, never a design: it says over, within, or not checked.
 */
import { makeFinding, type Finding } from "../../base/finding";
import type { Pounds } from "../../base/units";
import type { MeasureKind, MeasureStyle } from "../../measures/measures";
import { lengthFigure, measureText, placeText } from "../../measures/writeMeasure";
import { loadFindings } from "./loadFindings";
import type { InchPounds, Span } from "./movingLoads";
import type { LeafFault, TrackLoads } from "./trackLoads";

/** Goes with every check. */
export const loadCaution =
  "A check of entered capacities, not a design. Loads, anchors, the track, its hangers and the " +
  "structure above belong to a licensed engineer; follow the supplier's instructions and local codes.";

/** How loads are worked out, and from where their places are measured. */
export const loadMethod = (style: MeasureStyle): string =>
  "The track is taken as simple beams from hanger to hanger, the leaf as two loads that travel " +
  "along it (AISC beam formulas). Places are " +
  `${style === "metric" ? "millimetres" : "inches"} along the track from the opening's edge on the ` +
  "latch side.";

/** Ends the name of a place where `loadMethod` does not stand by. */
const measuredFrom = "from the opening's edge on the latch side";

/** What the supplier allows; `null` is not given. Each already holds its margin of safety. */
export type LoadCapacities = {
  /** On one trolley. */
  readonly trolley: Pounds | null;
  /** On one hanger, with its clamp, plate and bolts. */
  readonly hanger: Pounds | null;
  /** Bending of the track. */
  readonly track: InchPounds | null;
  /** Bending at a joint of the track. */
  readonly joint: InchPounds | null;
  /** The span may sink by its length over this number, such as 360. */
  readonly deflectionOver: number | null;
};

export const loadVerdicts = ["over", "within", "not checked"] as const;
export type LoadVerdict = (typeof loadVerdicts)[number];

export const loadKinds = ["trolley", "hanger", "track", "joint", "deflection"] as const;
export type LoadKind = (typeof loadKinds)[number];

/** One figure against one capacity. */
export type LoadCheck = {
  readonly kind: LoadKind;
  /** Such as `hanger at 96 in`. */
  readonly where: string;
  readonly unit: "lb" | "in-lb" | "in";
  /** `null` where it could not be worked out. */
  readonly load: number | null;
  readonly capacity: number | null;
  readonly verdict: LoadVerdict;
};

/** What each unit of a check measures. */
export const measured = {
  lb: "weight",
  "in-lb": "bending",
  in: "length",
} as const satisfies Record<LoadCheck["unit"], MeasureKind>;

export type CheckedLoads = {
  readonly checks: readonly LoadCheck[];
  readonly verdict: LoadVerdict;
  readonly findings: readonly Finding[];
  /** To be shown wherever a load is shown. */
  readonly caution: string;
};

/** The opening that findings name. */
export type OpeningName = { readonly job: string; readonly mark: string };

/**
 * The worst of any verdicts: over before not checked before within. No check at all is not checked.
 */
export function worstVerdict(verdicts: readonly LoadVerdict[]): LoadVerdict {
  if (verdicts.includes("over")) return "over";
  return verdicts.length === 0 || verdicts.includes("not checked") ? "not checked" : "within";
}

/** A load as large as its capacity is within. The billionth forgives what doubles lose on the way. */
function verdictOf(load: number | null, capacity: number | null): LoadVerdict {
  if (load === null || capacity === null) return "not checked";
  return load > capacity * (1 + 1e-9) ? "over" : "within";
}

const check = (
  kind: LoadKind,
  where: string,
  unit: LoadCheck["unit"],
  load: number | null,
  capacity: number | null,
): LoadCheck => ({ kind, where, unit, load, capacity, verdict: verdictOf(load, capacity) });

function checksOf(
  loads: TrackLoads,
  capacities: LoadCapacities,
  style: MeasureStyle,
): readonly LoadCheck[] {
  const spanText = ({ from, to }: Span): string =>
    `span ${lengthFigure(from, style)} to ${placeText(to, style)}`;
  return [
    ...loads.trolleys.map(({ leaf, trolley, load }) =>
      check("trolley", `leaf ${leaf}, trolley ${trolley}`, "lb", load, capacities.trolley),
    ),
    ...loads.hangers.map(({ at, load }) =>
      check("hanger", `hanger at ${placeText(at, style)}`, "lb", load, capacities.hanger),
    ),
    ...loads.spans.map((span) =>
      check("track", spanText(span), "in-lb", span.moment, capacities.track),
    ),
    ...loads.joints.map(({ at, moment }) =>
      check("joint", `joint at ${placeText(at, style)}`, "in-lb", moment, capacities.joint),
    ),
    ...loads.spans.map((span) => {
      const { deflectionOver } = capacities;
      const limit = deflectionOver === null ? null : (span.to - span.from) / deflectionOver;
      return check("deflection", spanText(span), "in", span.deflection, limit);
    }),
  ];
}

/** One finding for all places of a kind that are over: the one furthest over, and how many more. */
function overFindings(
  kind: LoadKind,
  checks: readonly LoadCheck[],
  about: OpeningName,
  style: MeasureStyle,
): readonly Finding[] {
  const over = checks.filter((one) => one.kind === kind && one.verdict === "over");
  const share = ({ load, capacity }: LoadCheck): number => (load ?? 0) / (capacity ?? 0);
  const [first, ...more] = [...over].sort((one, other) => share(other) - share(one));
  if (first === undefined) return [];
  const { unit, load, capacity } = first;
  const where = kind === "trolley" ? first.where : `${first.where} ${measuredFrom}`;
  const others = more.length === 1 ? "1 more place" : `${more.length} more places`;
  return [
    makeFinding(loadFindings, `${kind}-over-capacity`, {
      ...about,
      found: measureText(load ?? 0, measured[unit], style, 3),
      values: {
        where: more.length === 0 ? where : `${where} (and at ${others})`,
        capacity: measureText(capacity ?? 0, measured[unit], style, 3),
      },
    }),
  ];
}

/**
 * A kind of load over its capacity is a stop; what was not checked is one note for the opening; a leaf
 * that runs past its last hanger or would tip is a stop. `loads` is `null` where the leaf's weight
 * or the hangers' places are not known: then nothing is checked, and that is said. `style` is that of the words.
 */
export function checkLoads(
  loads: TrackLoads | LeafFault | null,
  capacities: LoadCapacities,
  { job, mark }: OpeningName,
  style: MeasureStyle = "pounds",
): CheckedLoads {
  const about = { job, mark };
  if (loads === null) {
    const finding = makeFinding(loadFindings, "leaf-weight-not-known", about);
    return { checks: [], verdict: "not checked", findings: [finding], caution: loadCaution };
  }
  if ("code" in loads) {
    const values = { leaf: loads.leaf };
    const finding = makeFinding(loadFindings, "leaf-tips", { ...about, values });
    return { checks: [], verdict: "over", findings: [finding], caution: loadCaution };
  }
  const checks = checksOf(loads, capacities, style);
  const findings = loadKinds.flatMap((kind) => overFindings(kind, checks, about, style));
  if (loads.beyond > 0) {
    const values = { beyond: placeText(loads.beyond, style) };
    findings.push(makeFinding(loadFindings, "leaf-beyond-last-hanger", { ...about, values }));
  }
  const unchecked = loadKinds.filter((kind) =>
    checks.some((one) => one.kind === kind && one.verdict === "not checked"),
  );
  if (unchecked.length > 0) {
    const values = { kinds: unchecked.join(", ") };
    findings.push(makeFinding(loadFindings, "loads-not-checked", { ...about, values }));
  }
  const verdict = loads.beyond > 0 ? "over" : worstVerdict(checks.map((one) => one.verdict));
  return { checks, verdict, findings, caution: loadCaution };
}
