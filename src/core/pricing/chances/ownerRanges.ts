/**
 * What an owner thinks a job's figures may turn out to be: one table of ranges, from which both the
 * picture of what moves the margin and the simulation are made.
 *
 * A range is a change against the estimate in percent: hours from -10 % to 30 %, most likely 0 %.
 */
import { jobKey } from "../../takeoff/takeOff";
import { noPercent, percent, shareOf, type Percent } from "../rates/percent";
import { rangeFault, type Range } from "./ranges";
import type { RollUpInput } from "../rollup/rollUpInput";
import type { SimulationRanges } from "./simulation";
import type { Swing } from "./swings";
import { factorsOf } from "./whatIf";

/** `price`: what winning the job, or a discount, may take from the price or add to it. */
export const rangeSubjects = ["material", "hours", "rate", "freight", "price"] as const;
export type RangeSubject = (typeof rangeSubjects)[number];

/** What each is called where a person reads or types it. */
export const rangeWords = {
  material: "material",
  hours: "hours",
  rate: "wages",
  freight: "freight",
  price: "price",
} as const satisfies Readonly<Record<RangeSubject, string>>;

/** `uniform`: all alike likely; `triangular`; `pert`: as a triangle, thinner at both ends. */
export const rangeShapes = ["uniform", "triangular", "pert"] as const;
export type RangeShape = (typeof rangeShapes)[number];

/** Changes in percent of what was estimated; `low <= likely <= high`, none below -100 %. */
export type ChangeRange = {
  readonly low: Percent;
  readonly likely: Percent;
  readonly high: Percent;
  readonly shape: RangeShape;
};

export type OwnerRange = ChangeRange & {
  readonly subject: RangeSubject;
  /** For material: one family, or the empty text for all. Else empty. */
  readonly family: string;
  /** The empty text for every job. */
  readonly job: string;
};

/** The range of one figure of one job. `family` is empty for all but material. */
export type FactorRange = ChangeRange & {
  readonly subject: RangeSubject;
  readonly family: string;
};

const range = (
  subject: RangeSubject,
  low: number,
  high: number,
  shape: RangeShape = "pert",
): OwnerRange => ({
  subject,
  family: "",
  job: "",
  low: percent(low * 10_000),
  likely: noPercent,
  high: percent(high * 10_000),
  shape,
});

/** What stands until the owner types ranges. Invented. */
export const starterRanges: readonly OwnerRange[] = [
  range("material", -5, 10),
  range("hours", -10, 30),
  range("rate", 0, 5),
  range("freight", -10, 25),
  range("price", -3, 0, "triangular"),
];

/** The figures of a job that can move, in the order of its roll-up, each with its range. */
export function rangesOfJob(
  ranges: readonly OwnerRange[],
  { job, input }: { readonly job: string; readonly input: RollUpInput },
): readonly FactorRange[] {
  return factorsOf(input).map((factor): FactorRange => {
    const subject = factor.kind === "discount" ? "price" : factor.kind;
    const family = factor.kind === "material" ? factor.family : "";
    const fitting = ranges.filter(
      (one) =>
        one.subject === subject &&
        (one.job === "" || jobKey(one.job) === jobKey(job)) &&
        (one.family === "" || nameKey(one.family) === nameKey(family)),
    );
    // The job's own before everyone's, then the family's own before all of them; the last typed wins.
    const closeness = (one: OwnerRange): number =>
      (one.job === "" ? 0 : 2) + (one.family === "" ? 0 : 1);
    const best = fitting.reduce<OwnerRange | null>(
      (found, one) => (found === null || closeness(one) >= closeness(found) ? one : found),
      null,
    );
    const { low, likely, high, shape } = best ?? unmoved;
    return { subject, family, low, likely, high, shape };
  });
}

const unmoved: ChangeRange = {
  low: noPercent,
  likely: noPercent,
  high: noPercent,
  shape: "uniform",
};

const nameKey = (name: string): string => name.trim().toLowerCase();

/** The same ranges as swings; a lower price is a discount. */
export const swingsIn = (ranges: readonly FactorRange[]): readonly Swing[] =>
  ranges.map(({ subject, family, low, high }): Swing => {
    if (subject === "material") return { factor: { kind: "material", family }, low, high };
    if (subject !== "price") return { factor: { kind: subject }, low, high };
    return { factor: { kind: "discount" }, low: percent(0 - high), high: percent(0 - low) };
  });

/** The same ranges as factors for the simulation. */
export function simulationRangesIn(ranges: readonly FactorRange[]): SimulationRanges {
  const of = (subject: RangeSubject): Range =>
    factorRange(ranges.find((one) => one.subject === subject) ?? unmoved);
  return {
    material: new Map(
      ranges.flatMap((one) =>
        one.subject === "material" ? [[one.family, factorRange(one)] as const] : [],
      ),
    ),
    hours: of("hours"),
    rate: of("rate"),
    freight: of("freight"),
    price: of("price"),
  };
}

function factorRange({ low, likely, high, shape }: ChangeRange): Range {
  const [least, usual, most] = [1 + shareOf(low), 1 + shareOf(likely), 1 + shareOf(high)];
  return shape === "uniform"
    ? { kind: "uniform", low: least, high: most }
    : { kind: shape, low: least, likely: usual, high: most };
}

/** The most that a figure may be more than estimated: ten times. */
const mostChange = percent(10_000_000);

/** Why a range cannot be used, in words, or `null`. */
export function changeFault(change: ChangeRange): string | null {
  if (change.low < -1_000_000) return "nothing can be more than 100 % less";
  if (change.high > mostChange) return "the most is 1,000 % more";
  return change.low <= change.likely && change.likely <= change.high
    ? rangeFault(factorRange(change))
    : "the likely change must be between the lowest and the highest";
}
