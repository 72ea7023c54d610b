/** The hanging loads of a workbook's openings, against the capacities of its rates sheet. */
import type { Finding } from "../../core/base/finding";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { between, finish, type Steps } from "../../core/base/steps";
import { jobLoadsSteps, loadRules, type JobLoads } from "../../core/pricing/loads/openingLoads";
import { rateReader } from "../../core/pricing/rates/rates";
import type { WorkbookPrices } from "./priceWorkbook";
import { currencyIn, measureStyleIn, type Settings } from "../settings";
import type { WorkbookTakeOff } from "../reading/workbookTakeOff";

export type WorkbookLoads = {
  readonly jobs: readonly JobLoads[];
  readonly findings: readonly Finding[];
};

/** In short steps. The stops of hanging loads are among the take-off's findings, and not here again. */
export function* workbookLoadSteps(
  takeOff: WorkbookTakeOff,
  prices: Pick<WorkbookPrices, "rates">,
  settings: Settings,
): Steps<WorkbookLoads> {
  const { jobs } = takeOff.estimate;
  const findings: Finding[] = [];
  const loads: JobLoads[] = [];
  for (const [index, job] of jobs.entries()) {
    const steps = loadStepsOf(job, takeOff, prices, settings);
    const made = yield* between(index / jobs.length, (index + 1) / jobs.length, steps);
    loads.push(made.loads);
    findings.push(...made.findings);
  }
  return { jobs: loads, findings };
}

export type JobLoadsRead = {
  readonly loads: JobLoads;
  /** What of the rates that loads go by cannot be read, or is doubted. */
  readonly entered: readonly Finding[];
  readonly findings: readonly Finding[];
};

/** Those of one job of the take-off. */
export function* loadStepsOf(
  { job, takeOff, loads: checked }: JobEstimate,
  { estimate }: WorkbookTakeOff,
  { rates }: Pick<WorkbookPrices, "rates">,
  settings: Settings,
): Steps<JobLoadsRead> {
  const read = rateReader(rates, job, currencyIn(settings));
  const rules = loadRules(read, measureStyleIn(settings));
  const loads = checked ?? (yield* jobLoadsSteps(takeOff, estimate.items, rules));
  return {
    loads,
    entered: read.findings,
    findings: [...read.findings, ...loads.findings.filter(({ level }) => level !== "stop")],
  };
}

/** The same at once. */
export const workbookLoads = (...of: Parameters<typeof workbookLoadSteps>): WorkbookLoads =>
  finish(workbookLoadSteps(...of));
