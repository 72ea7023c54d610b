/**
 * The chance that a job falls below its target margin. A task is plain data, so that it can be sent
 * to a worker; running it is `Steps`, so that it can also run in slices where there is none.
 */
import type { Steps } from "../../core/base/steps";
import { costModel, type CostModel } from "../../core/pricing/rates/costModel";
import {
  rangesOfJob,
  simulationRangesIn,
  type OwnerRange,
} from "../../core/pricing/chances/ownerRanges";
import {
  simulate,
  type Simulation,
  type SimulationPlan,
  type SimulationRanges,
} from "../../core/pricing/chances/simulation";
import type { JobToChange } from "./whatIfJobs";

export type SimulationTask = {
  readonly job: string;
  readonly model: CostModel;
  readonly ranges: SimulationRanges;
  readonly plan: SimulationPlan;
};

/** What the owner chooses of a simulation; the same seed gives the same answer. */
export type SimulationWish = { readonly seed: number; readonly draws: number };

export const usualDraws = 10_000;

/** Draws of one step: a few milliseconds' worth. */
const slice = 1_000;
const bars = 24;

export const simulationTask = (
  job: JobToChange,
  ranges: readonly OwnerRange[],
  { seed, draws }: SimulationWish,
): SimulationTask => ({
  job: job.job,
  model: costModel(job.input, job.rollUp),
  ranges: simulationRangesIn(rangesOfJob(ranges, job)),
  plan: { seed, draws, slice, bars, target: job.target },
});

/** `null` for a job whose price is not above zero, which has no margin. */
export function* runSimulation({ model, ranges, plan }: SimulationTask): Steps<Simulation | null> {
  const draws = simulate(model, ranges, plan);
  for (;;) {
    const step = draws.next();
    if (step.done === true) return step.value;
    yield step.value / plan.draws;
  }
}
