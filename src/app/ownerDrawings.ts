/** The owner's sheets beside the prices: hanging loads, what-if, and actuals where any were typed. */
import { finish, type Steps } from "../core/base/steps";
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

/** A job a step. */
export function* drawOwnerSheets(
  { inputs }: WorkbookTakeOff,
  prices: WorkbookPrices,
  loads: WorkbookLoads,
  settings: Settings,
): Steps<readonly Drawing[]> {
  const { sign } = currencyIn(settings);
  const report = actualsReport(prices.actuals, inputs);
  const { ranges } = prices.ranges;
  const jobs: Parameters<typeof whatIfSheet>[0][number][] = [];
  for (const job of prices.jobs) {
    yield jobs.length / prices.jobs.length;
    jobs.push({ ...job, swings: swingsOfJob(job, ranges) });
  }
  return [
    hangingLoadsSheet(loads.jobs),
    whatIfSheet(jobs, sign),
    ...(report.jobs.length === 0 ? [] : [actualsReportSheet(report, sign)]),
  ];
}

/** The same at once. */
export const ownerDrawings = (...of: Parameters<typeof drawOwnerSheets>): readonly Drawing[] =>
  finish(drawOwnerSheets(...of));
