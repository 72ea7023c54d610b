import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { cents } from "../../../../src/core/base/units";
import {
  costModel,
  modelledMargin,
  type CostFactors,
} from "../../../../src/core/pricing/rates/costModel";
import { percent } from "../../../../src/core/pricing/rates/percent";
import type { Range } from "../../../../src/core/pricing/chances/ranges";
import { rollUp } from "../../../../src/core/pricing/rollup/rollUp";
import type { RollUpInput } from "../../../../src/core/pricing/rollup/rollUpInput";
import {
  certain,
  marginAtShare,
  rangeDoubts,
  simulate,
  type Simulation,
  type SimulationPlan,
  type SimulationRanges,
} from "../../../../src/core/pricing/chances/simulation";
import { asEstimated, rollUpIf } from "../../../../src/core/pricing/chances/whatIf";
import { anyJob, plainJob } from "../jobs";

const model = costModel(plainJob, rollUp(plainJob));
const nothingMoves: SimulationRanges = {
  material: new Map(),
  hours: certain,
  rate: certain,
  freight: certain,
  price: certain,
};
const plan: SimulationPlan = {
  draws: 20_000,
  slice: 5000,
  seed: 7,
  target: percent(250_000),
  bars: 20,
};

function run(ranges: Partial<SimulationRanges>, change: Partial<SimulationPlan> = {}): Simulation {
  const steps = simulate(model, { ...nothingMoves, ...ranges }, { ...plan, ...change });
  for (;;) {
    const step = steps.next();
    if (step.done !== true) continue;
    if (step.value === null) throw new Error("There should be a margin.");
    return step.value;
  }
}
const margin = (change: Partial<CostFactors>) =>
  modelledMargin(model, {
    material: model.material.map(() => 1),
    hours: 1,
    rate: 1,
    freight: 1,
    price: 1,
    ...change,
  });

describe("the model behind the draws", () => {
  test("comes to what the roll-up comes to, to a cent for each line", () => {
    fc.assert(
      fc.property(anyJob, fc.integer({ min: 0, max: 1_000_000 }), (job, more) => {
        const base = rollUp(job);
        fc.pre(base.price > 0);
        const by = percent(more);
        const rolled = rollUpIf(job, base, { ...asEstimated, hours: by, freight: by });
        const of = costModel(job, base);
        const modelled = modelledMargin(of, {
          material: of.material.map(() => 1),
          hours: 1 + more / 1e6,
          rate: 1,
          freight: 1 + more / 1e6,
          price: 1,
        });
        const cost = base.price * (1 - modelled);
        // A hundredth of an hour is up to 5 units of money here, and rates are rounded too.
        const coarse = job.labour.length * 600 + job.freight.length * 60 + rolled.lines.length;
        expect(Math.abs(cost - rolled.cost)).toBeLessThanOrEqual(coarse * 4 + cost * 1e-9);
      }),
      { numRuns: 200 },
    );
  });

  test("without changes is the roll-up to the cent, and to a thousandth of it", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const base = rollUp(job);
        fc.pre(base.price > 0);
        const of = costModel(job, base);
        const as = { material: of.material.map(() => 1), hours: 1, rate: 1, freight: 1, price: 1 };
        const cost = base.price * (1 - modelledMargin(of, as));
        expect(Math.abs(cost - base.cost)).toBeLessThanOrEqual(0.001 + cost * 1e-12);
      }),
      { numRuns: 200 },
    );
  });
});

/** Within five standard errors. */
function expectMean({ mean, deviation, draws }: Simulation, known: number) {
  expect(Math.abs(mean - known)).toBeLessThan((5 * deviation) / Math.sqrt(draws));
}

/** Mean within five standard errors, deviation within three percent. */
function expectSpread(simulation: Simulation, mean: number, deviation: number) {
  expectMean(simulation, mean);
  expect(Math.abs(simulation.deviation / deviation - 1)).toBeLessThan(0.03);
}

describe("a simulation against closed forms", () => {
  test("with one even range the margin is even too, and its chance is a ratio of lengths", () => {
    const range: Range = { kind: "uniform", low: 0.8, high: 1.3 };
    const simulation = run({ hours: range });
    const [low, high] = [margin({ hours: 1.3 }), margin({ hours: 0.8 })];
    expectSpread(simulation, (low + high) / 2, (high - low) / Math.sqrt(12));
    const chance = (0.25 - low) / (high - low);
    expect(chance).toBeGreaterThan(0.2);
    expect(Math.abs(simulation.belowTarget - chance)).toBeLessThan(5 * simulation.uncertainty);
    for (const share of [0.05, 0.25, 0.5, 0.95]) {
      const quantile = low + share * (high - low);
      expect(Math.abs(marginAtShare(simulation, share) - quantile)).toBeLessThan(
        0.02 * (high - low),
      );
    }
  });

  test("with normal ranges the margin is normal, its variances added", () => {
    const normal = (deviation: number): Range => ({ kind: "normal", mean: 1, deviation });
    const material = new Map([["Track", normal(0.1)]]);
    const simulation = run({ material, hours: normal(0.08), freight: normal(0.2) });
    const moved = (change: Partial<CostFactors>) => margin({}) - margin(change);
    const deviation = Math.hypot(
      0.1 * moved({ material: [1, 2] }),
      0.08 * moved({ hours: 2 }),
      0.2 * moved({ freight: 2 }),
    );
    expectSpread(simulation, margin({}), deviation);
    // Quantiles of the standard normal.
    for (const [share, deviations] of [
      [0.05, -1.644854],
      [0.5, 0],
      [0.95, 1.644854],
    ] as const) {
      const quantile = margin({}) + deviations * deviation;
      expect(Math.abs(marginAtShare(simulation, share) - quantile)).toBeLessThan(0.05 * deviation);
    }
  });

  test("with a triangular and a PERT range the mean is theirs", () => {
    const points = { low: 0.9, likely: 1, high: 1.6 };
    const triangular = run({ hours: { kind: "triangular", ...points } });
    expectMean(triangular, margin({ hours: 3.5 / 3 }));
    const pert = run({ hours: { kind: "pert", ...points } });
    expectMean(pert, margin({ hours: 6.5 / 6 }));
  });

  test("hours and wages multiply: the mean of the product is the product of the means", () => {
    const even = (low: number, high: number): Range => ({ kind: "uniform", low, high });
    const simulation = run({ hours: even(1, 1.4), rate: even(0.9, 1.3) });
    expectMean(simulation, margin({ hours: 1.2, rate: 1.1 }));
  });
});

describe("a simulation", () => {
  const hours: Range = { kind: "triangular", low: 0.8, likely: 1, high: 1.5 };

  test("is the same for the same seed, in slices of any size, and another for another", () => {
    const margins = (change: Partial<SimulationPlan>) => run({ hours }, change).margins;
    expect(margins({ slice: 20_000 })).toEqual(margins({ slice: 1 }));
    expect(margins({ seed: 8 })).not.toEqual(margins({ seed: 7 }));
  });

  test("tells how far it is after each slice, and can be left off", () => {
    const steps = simulate(model, { ...nothingMoves, hours }, { ...plan, draws: 12_000 });
    expect([steps.next().value, steps.next().value, steps.next().value]).toEqual([
      5000, 10_000, 12_000,
    ]);
    const left = simulate(model, nothingMoves, plan);
    left.next();
    expect(left.return(null)).toEqual({ done: true, value: null });
  });

  test("has bars that hold every draw", () => {
    const { histogram, margins } = run({ hours });
    expect(histogram).toHaveLength(20);
    expect(histogram.reduce((sum, { count }) => sum + count, 0)).toBe(margins.length);
    expect(histogram[0]?.from).toBe(margins[0]);
    expect(histogram.at(-1)?.to).toBe(margins.at(-1));
    for (const { from, to, count } of histogram.slice(0, -1)) {
      expect(count).toBe(margins.filter((one) => one >= from && one < to).length);
    }
  });

  test("without ranges is the margin as estimated, in one bar", () => {
    const certainly = run({}, { target: percent(Math.floor(margin({}) * 1e6)) });
    expect(certainly.belowTarget).toBe(0);
    expect(certainly.deviation).toBeLessThan(1e-12);
    expect(certainly.histogram).toEqual([
      { from: expect.closeTo(margin({}), 12), to: expect.closeTo(margin({}), 12), count: 20_000 },
    ]);
  });

  test("gives a chance of losing money, and never a price of nothing", () => {
    const simulation = run({ price: { kind: "normal", mean: 0.8, deviation: 0.5 } });
    expect(simulation.belowZero).toBeGreaterThan(0.3);
    expect(simulation.belowZero).toBeLessThanOrEqual(simulation.belowTarget);
    expect(simulation.margins.every((one) => Number.isFinite(one))).toBe(true);
  });

  test("of a job without a price is none", () => {
    const free: RollUpInput = { ...plainJob, price: { method: "typed", price: cents(0) } };
    const steps = simulate(costModel(free, rollUp(free)), nothingMoves, plan);
    expect(steps.next()).toEqual({ done: true, value: null });
  });

  test("names each range that cannot be used", () => {
    const bad: Range = { kind: "uniform", low: 2, high: 1 };
    const doubts = rangeDoubts(
      { ...nothingMoves, hours: bad, material: new Map([["Track", bad]]) },
      "North",
    );
    expect(doubts.map(({ message }) => message.split(" cannot")[0])).toEqual([
      "The range of material: Track",
      "The range of hours",
    ]);
    expect(rangeDoubts(nothingMoves, "North")).toEqual([]);
  });
});
