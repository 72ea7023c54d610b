/** The hanging loads of a workbook's openings, against the capacities of its rates sheet. */
import type { Finding } from "../core/base/finding";
import { between, finish, type Steps } from "../core/base/steps";
import { jobLoadsSteps, loadRules, type JobLoads } from "../core/pricing/openingLoads";
import { rateReader } from "../core/pricing/rates";
import type { WorkbookPrices } from "./priceWorkbook";
import { currencyIn, type Settings } from "./settings";
import type { WorkbookTakeOff } from "./takeOffWorkbook";

export type WorkbookLoads = {
  readonly jobs: readonly JobLoads[];
  readonly findings: readonly Finding[];
};

/** In short steps. The stops of hanging loads are among the take-off's findings, and not here again. */
export function* workbookLoadSteps(
  { estimate }: WorkbookTakeOff,
  { rates }: Pick<WorkbookPrices, "rates">,
  settings: Settings,
): Steps<WorkbookLoads> {
  const findings: Finding[] = [];
  const jobs: JobLoads[] = [];
  for (const [index, { job, takeOff, loads: checked }] of estimate.jobs.entries()) {
    const read = rateReader(rates, job, currencyIn(settings));
    const rules = loadRules(read);
    const share = 1 / estimate.jobs.length;
    const steps = jobLoadsSteps(takeOff, estimate.items, rules);
    const loads = checked ?? (yield* between(share * index, share * (index + 1), steps));
    jobs.push(loads);
    findings.push(...read.findings, ...loads.findings.filter(({ level }) => level !== "stop"));
  }
  return { jobs, findings };
}

/** The same at once. */
export const workbookLoads = (...of: Parameters<typeof workbookLoadSteps>): WorkbookLoads =>
  finish(workbookLoadSteps(...of));
