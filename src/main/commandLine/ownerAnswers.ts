/** What an owner asks of the prices on the command line: what-if, simulation, actuals. */
import { finish } from "../../core/base/steps";
import type { Simulation } from "../../core/pricing/chances/simulation";
import type { SwingEffect } from "../../core/pricing/chances/swings";
import type { Inputs } from "../../app/reading/inputs";
import { actualsReport, type ActualsReport } from "../../app/pricing/jobActuals";
import type { WorkbookPrices } from "../../app/pricing/priceWorkbook";
import { runSimulation, simulationTask } from "../../app/pricing/simulateJob";
import { swingsOfJob, whatIfJobs, type WhatIfTable } from "../../app/pricing/whatIfJobs";
import { whatIfOf, type PriceArguments } from "./priceArguments";

export type JobSwings = { readonly job: string; readonly swings: readonly SwingEffect[] };
export type JobSimulation = { readonly job: string; readonly simulation: Simulation | null };

/** What was asked for beyond the prices; `null` where it was not. */
export type OwnerAnswers = {
  readonly whatIf: { readonly table: WhatIfTable; readonly swings: readonly JobSwings[] } | null;
  readonly simulations: readonly JobSimulation[] | null;
  readonly actuals: ActualsReport | null;
};

/** Answers what was asked for. */
export function ownerAnswers(
  { changes, seed, draws, actuals }: PriceArguments,
  prices: WorkbookPrices,
  inputs: Inputs,
): OwnerAnswers {
  const { jobs } = prices;
  const { ranges } = prices.ranges;
  const families = new Set(jobs.flatMap(({ input }) => input.material.map((one) => one.family)));
  return {
    whatIf:
      changes === null
        ? null
        : {
            table: whatIfJobs(jobs, whatIfOf(changes, families)),
            swings: jobs.map((job) => ({ job: job.job, swings: swingsOfJob(job, ranges) })),
          },
    simulations:
      seed === null
        ? null
        : jobs.map((job) => ({
            job: job.job,
            simulation: finish(runSimulation(simulationTask(job, ranges, { seed, draws }))),
          })),
    actuals: actuals ? actualsReport(prices.actuals, inputs) : null,
  };
}
