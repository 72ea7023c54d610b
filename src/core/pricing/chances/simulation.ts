/**
 * The chance that a job falls below its target margin, by drawing its figures at random many times.
 *
 * The draws depend on nothing but the seed and the ranges, which are independent of one another. The
 * work comes in slices, so that a worker can report, and stop between two of them.
 */
import { makeFinding, type Finding } from "../../base/finding";
import { modelledMargin, type CostModel } from "../rates/costModel";
import { shareOf, type Percent } from "../rates/percent";
import { priceFindings } from "../priceFindings";
import { randomFromSeed } from "./randomNumbers";
import { drawFrom, rangeFault, type Range } from "./ranges";

/** What each figure may turn out to be, as a factor of what was estimated. */
export type SimulationRanges = {
  /** By family; one that is not named is as estimated. */
  readonly material: ReadonlyMap<string, Range>;
  readonly hours: Range;
  readonly rate: Range;
  readonly freight: Range;
  /** Of the price as bid: what winning the job, or a discount, may take or add. */
  readonly price: Range;
};

export const certain: Range = { kind: "fixed", value: 1 };

/** A finding for each range that cannot be used; `simulate` asks for none. */
export function rangeDoubts(ranges: SimulationRanges, job: string): readonly Finding[] {
  const { material, ...others } = ranges;
  const named = [...material].map(([family, range]) => [`material: ${family}`, range] as const);
  return [...named, ...Object.entries(others)].flatMap(([factor, range]) => {
    const reason = rangeFault(range);
    const values = { factor, reason: reason ?? "" };
    return reason === null ? [] : [makeFinding(priceFindings, "range-not-usable", { job, values })];
  });
}

export type SimulationPlan = {
  /** Whole, one or more; thousands as a rule. */
  readonly draws: number;
  /** Draws in one slice; one or more. */
  readonly slice: number;
  readonly seed: number;
  readonly target: Percent;
  /** Bars of the histogram; one or more. */
  readonly bars: number;
};

/** A bar of the histogram: margins from `from` up to `to`; the last bar holds its `to` as well. */
export type HistogramBar = { readonly from: number; readonly to: number; readonly count: number };

export type Simulation = {
  readonly draws: number;
  readonly seed: number;
  readonly target: Percent;
  readonly mean: number;
  /** Of the draws: the root of their variance. */
  readonly deviation: number;
  /** The share of draws whose margin is below the target, and below zero. */
  readonly belowTarget: number;
  readonly belowZero: number;
  /** How far off `belowTarget` is likely to be, one standard error: sqrt(p (1 - p) / n). */
  readonly uncertainty: number;
  /** Every margin drawn, lowest first. */
  readonly margins: Float64Array;
  readonly histogram: readonly HistogramBar[];
};

/** A price is never taken to fall below one hundredth of the bid: there would be no margin of it. */
const leastPriceFactor = 0.01;

/**
 * Runs the plan slice by slice: yields the number of draws done after each slice and returns the
 * whole. `null` for a job whose price is not above zero, which has no margin.
 */
export function* simulate(
  model: CostModel,
  ranges: SimulationRanges,
  plan: SimulationPlan,
): Generator<number, Simulation | null, void> {
  if (model.price <= 0) return null;
  const random = randomFromSeed(plan.seed);
  const margins = new Float64Array(plan.draws);
  const familyRanges = model.material.map(({ family }) => ranges.material.get(family) ?? certain);
  for (let draw = 0; draw < plan.draws; draw += 1) {
    if (draw > 0 && draw % plan.slice === 0) yield draw;
    margins[draw] = modelledMargin(model, {
      material: familyRanges.map((range) => drawFrom(range, random)),
      hours: drawFrom(ranges.hours, random),
      rate: drawFrom(ranges.rate, random),
      freight: drawFrom(ranges.freight, random),
      price: Math.max(leastPriceFactor, drawFrom(ranges.price, random)),
    });
  }
  yield plan.draws;
  return summedUp(margins.sort(), plan);
}

function summedUp(
  margins: Float64Array,
  { draws, seed, target, bars }: SimulationPlan,
): Simulation {
  const mean = margins.reduce((sum, margin) => sum + margin, 0) / draws;
  const squares = margins.reduce((sum, margin) => sum + (margin - mean) ** 2, 0);
  const belowTarget = countBelow(margins, shareOf(target)) / draws;
  return {
    draws,
    seed,
    target,
    mean,
    deviation: Math.sqrt(squares / draws),
    belowTarget,
    belowZero: countBelow(margins, 0) / draws,
    uncertainty: Math.sqrt((belowTarget * (1 - belowTarget)) / draws),
    margins,
    histogram: histogramOf(margins, bars),
  };
}

/** How many of the sorted margins are below `limit`; a billionth below it is not, for doubles' sake. */
function countBelow(margins: Float64Array, limit: number): number {
  const first = margins.findIndex((margin) => margin >= limit - 1e-9);
  return first === -1 ? margins.length : first;
}

/** Bars of one width from the lowest margin to the highest; a single bar where they are the same. */
function histogramOf(margins: Float64Array, bars: number): readonly HistogramBar[] {
  const [low, high] = [margins[0] ?? 0, margins[margins.length - 1] ?? 0];
  if (low === high) return [{ from: low, to: high, count: margins.length }];
  const width = (high - low) / bars;
  const counts = new Array<number>(bars).fill(0);
  for (const margin of margins) {
    const bar = Math.min(bars - 1, Math.floor((margin - low) / width));
    counts[bar] = (counts[bar] ?? 0) + 1;
  }
  return counts.map((count, bar) => ({
    from: low + bar * width,
    to: bar === bars - 1 ? high : low + (bar + 1) * width,
    count,
  }));
}

/**
 * The margin that a share of the draws stays at or below, between two draws in proportion: what a
 * spreadsheet's PERCENTILE.INC gives. `share` from 0 to 1.
 */
export function marginAtShare({ margins }: Pick<Simulation, "margins">, share: number): number {
  const at = share * (margins.length - 1);
  const [below, above] = [margins[Math.floor(at)] ?? NaN, margins[Math.ceil(at)] ?? NaN];
  return below + (above - below) * (at - Math.floor(at));
}
