/** A workbook's jobs priced: the take-off, the firm's rates from its rates sheet, the roll-ups. */
import type { Finding } from "../core/base/finding";
import { err, ok, type Result } from "../core/base/result";
import { marginDoubts, marginTable, type MarginTable } from "../core/pricing/marginTable";
import { priceJob, type JobPrice } from "../core/pricing/priceJob";
import type { RateTable } from "../core/pricing/rates";
import { marginsSheet } from "../sheets/marginsSheet";
import { priceSheet } from "../sheets/priceSheet";
import { readRateTable } from "../tables/rateTable";
import type { Drawing } from "../workbook/drawing";
import type { Workbook, WorkbookFault } from "../workbook/workbook";
import { currencyIn, type Settings } from "./settings";
import type { WorkbookTakeOff } from "./takeOffWorkbook";

export type WorkbookPrices = {
  readonly jobs: readonly JobPrice[];
  readonly margins: MarginTable;
  /** Of the rates and prices; those of the take-off come before them. */
  readonly findings: readonly Finding[];
};

const noRates: RateTable = { usual: {}, byJob: new Map() };

/** Days after which a price is old, where the rates do not say. */
const oldAfterDays = 180;

/**
 * Prices what was taken off, by the workbook's rates sheet or the starter's rates. `today` is a date
 * serial. Error: the host could not read.
 */
export async function priceWorkbook(
  workbook: Workbook,
  { estimate }: WorkbookTakeOff,
  settings: Settings,
  today: number,
): Promise<Result<WorkbookPrices, WorkbookFault>> {
  const read = await readRates(workbook);
  if (!read.ok) return read;
  const { rates, findings } = read.value;
  const currency = currencyIn(settings);
  const jobs = estimate.jobs.map(({ job, takeOff, material, uncounted }) =>
    priceJob(
      { job, takeOff, material, uncounted: uncounted.map(({ mark }) => mark) },
      rates,
      currency,
    ),
  );
  const margins = marginTable(jobs);
  const age = rates.usual.priceAge?.value;
  const mostDays = typeof age === "number" ? age : oldAfterDays;
  return ok({
    jobs,
    margins,
    findings: [
      ...findings,
      ...jobs.flatMap((job) => job.findings),
      ...marginDoubts(margins, jobs, { today, mostDays }),
    ],
  });
}

/** A price sheet for each job, then the margins of all. */
export const priceDrawings = (prices: WorkbookPrices, settings: Settings): readonly Drawing[] => {
  const { sign } = currencyIn(settings);
  return [...prices.jobs.map((job) => priceSheet(job, sign)), marginsSheet(prices.margins, sign)];
};

type Rates = { readonly rates: RateTable; readonly findings: readonly Finding[] };

async function readRates(workbook: Workbook): Promise<Result<Rates, WorkbookFault>> {
  for (const { name, visible, mark } of await workbook.sheets()) {
    if (!visible || mark !== null) continue;
    const block = await workbook.read({ kind: "sheet", sheet: name });
    if (!block.ok) return err(block.error);
    const read = readRateTable(block.value);
    if (read !== null) return ok(read);
  }
  return ok({ rates: noRates, findings: [] });
}
