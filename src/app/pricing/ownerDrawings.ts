/** The owner's sheets beside the prices: hanging loads, what-if, and actuals where any were typed. */
import { between, finish, type Steps } from "../../core/base/steps";
import { actualsReportSheet } from "../../sheets/owner/actualsReportSheet";
import { drawHangingLoads } from "../../sheets/owner/hangingLoadsSheet";
import { whatIfSheet } from "../../sheets/owner/whatIfSheet";
import type { Drawing } from "../../workbook/drawing";
import { actualsReport } from "./jobActuals";
import type { WorkbookPrices } from "./priceWorkbook";
import { currencyIn, measureStyleIn, type Settings } from "../settings";
import type { WorkbookTakeOff } from "../reading/workbookTakeOff";
import { swingsOfJob } from "./whatIfJobs";
import { workbookLoadSteps, type WorkbookLoads } from "./workbookLoads";

/** How much of the way is done once the loads are known. */
const whenLoaded = 0.4;
/** And once it is known what moves each margin. */
const whenDrawn = 0.7;

/** In short steps. `known` are the loads where they were worked out before. */
export function* drawOwnerSheets(
  takeOff: WorkbookTakeOff,
  prices: WorkbookPrices,
  settings: Settings,
  known?: WorkbookLoads,
): Steps<readonly Drawing[]> {
  const { sign } = currencyIn(settings);
  const loading = workbookLoadSteps(takeOff, prices, settings);
  const loads = known ?? (yield* between(0, whenLoaded, loading));
  const report = actualsReport(prices.actuals, takeOff.inputs);
  const { ranges } = prices.ranges;
  const jobs: Parameters<typeof whatIfSheet>[0][number][] = [];
  for (const job of prices.jobs) {
    yield whenLoaded + (whenDrawn - whenLoaded) * (jobs.length / prices.jobs.length);
    jobs.push({ ...job, swings: swingsOfJob(job, ranges) });
  }
  const drawnLoads = yield* between(
    whenDrawn,
    1,
    drawHangingLoads(loads.jobs, measureStyleIn(settings)),
  );
  return [
    drawnLoads,
    whatIfSheet(jobs, sign),
    ...(report.jobs.length === 0 ? [] : [actualsReportSheet(report, sign)]),
  ];
}

/** The same at once. */
export const ownerDrawings = (...of: Parameters<typeof drawOwnerSheets>): readonly Drawing[] =>
  finish(drawOwnerSheets(...of));
