/** The owner's sheets beside the prices: hanging loads, what-if, and actuals where any were typed. */
import { actualsReportSheet } from "../sheets/actualsReportSheet";
import { hangingLoadsSheet } from "../sheets/hangingLoadsSheet";
import { whatIfSheet } from "../sheets/whatIfSheet";
import type { Drawing } from "../workbook/drawing";
import { actualsReport } from "./jobActuals";
import type { WorkbookPrices } from "./priceWorkbook";
import { currencyIn, type Settings } from "./settings";
import type { WorkbookTakeOff } from "./takeOffWorkbook";
import { swingsOfJob } from "./whatIfJobs";
import type { WorkbookLoads } from "./workbookLoads";

export function ownerDrawings(
  { inputs }: WorkbookTakeOff,
  prices: WorkbookPrices,
  loads: WorkbookLoads,
  settings: Settings,
): readonly Drawing[] {
  const { sign } = currencyIn(settings);
  const report = actualsReport(prices.actuals, inputs);
  const { ranges } = prices.ranges;
  const jobs = prices.jobs.map((job) => ({ ...job, swings: swingsOfJob(job, ranges) }));
  return [
    hangingLoadsSheet(loads.jobs),
    whatIfSheet(jobs, sign),
    ...(report.jobs.length === 0 ? [] : [actualsReportSheet(report, sign)]),
  ];
}
