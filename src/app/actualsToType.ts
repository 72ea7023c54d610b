/** A sheet for what a job really cost and took, with every name that its estimate has. */
import { err, ok, type Result } from "../core/base/result";
import { majorUnits } from "../core/money/writeMoney";
import { jobKey } from "../core/takeoff/takeOff";
import { actualsSheet } from "../sheets/ownerSheets";
import type { Drawing } from "../workbook/drawing";
import type { WorkbookPrices } from "./priceWorkbook";
import { currencyIn, type Settings } from "./settings";

/** Error: there is no such job. The sheet is the person's: nothing ever writes over it. */
export function actualsToType(
  { actuals }: Pick<WorkbookPrices, "actuals">,
  settings: Settings,
  wanted: string,
): Result<Drawing, string> {
  const estimate = actuals.jobs.find(({ job }) => jobKey(job) === jobKey(wanted));
  if (estimate === undefined) {
    const names = actuals.jobs.map(({ job }) => job).join("; ");
    return err(`There is no job ${wanted}. Jobs of this workbook: ${names}.`);
  }
  const { job, costs, bags, pieces } = estimate;
  const currency = currencyIn(settings);
  const hundredths = (value: number): number => Math.round(value * 100) / 100;
  const rows = [
    ...costs.map((cost) => [job, "cost", cost.name, majorUnits(cost.estimated, currency), null]),
    ...bags.map(({ bag, estimated }) => [job, "hours", bag, hundredths(estimated / 60), null]),
    ...pieces.map(({ item, counted }) => [job, "pieces", item, counted, null]),
  ];
  return ok(actualsSheet(rows, null));
}
