/** The hanging loads of a workbook's openings, against the capacities of its rates sheet. */
import type { Finding } from "../core/base/finding";
import { jobLoads, loadRules, type JobLoads } from "../core/pricing/openingLoads";
import { rateReader } from "../core/pricing/rates";
import type { WorkbookPrices } from "./priceWorkbook";
import { currencyIn, type Settings } from "./settings";
import type { WorkbookTakeOff } from "./takeOffWorkbook";

export type WorkbookLoads = {
  readonly jobs: readonly JobLoads[];
  readonly findings: readonly Finding[];
};

export function workbookLoads(
  { estimate }: WorkbookTakeOff,
  { rates }: Pick<WorkbookPrices, "rates">,
  settings: Settings,
): WorkbookLoads {
  const findings: Finding[] = [];
  const jobs = estimate.jobs.map(({ job, takeOff }) => {
    const read = rateReader(rates, job, currencyIn(settings));
    const loads = jobLoads(takeOff, estimate.items, loadRules(read));
    findings.push(...read.findings, ...loads.findings);
    return loads;
  });
  return { jobs, findings };
}
