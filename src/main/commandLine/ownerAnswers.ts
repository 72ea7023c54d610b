/** What an owner asks of the prices on the command line: what-if, simulation, actuals. */
import { finish } from "../../core/base/steps";
import type { Simulation } from "../../core/pricing/simulation";
import type { SwingEffect } from "../../core/pricing/swings";
import type { Inputs } from "../../app/inputs";
import { actualsReport, type ActualsReport } from "../../app/jobActuals";
import type { WorkbookPrices } from "../../app/priceWorkbook";
import { runSimulation, simulationTask } from "../../app/simulateJob";
import { swingsOfJob, whatIfJobs, type WhatIfTable } from "../../app/whatIfJobs";
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
