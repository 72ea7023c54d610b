/** A workbook's jobs priced: the take-off, the firm's rates from its rates sheet, the roll-ups. */
import { makeFinding, type Finding } from "../../core/base/finding";
import type { Block } from "../../core/base/cell";
import { err, ok, type Result } from "../../core/base/result";
import { between, finish, type Steps } from "../../core/base/steps";
import type { JobActuals } from "../../core/pricing/actuals/actuals";
import { alternateFindings } from "../../core/pricing/alternates/alternateFindings";
import { checkAlternates, type AlternateRow } from "../../core/pricing/alternates/alternateRows";
import { estimatedActuals } from "../../core/pricing/actuals/estimatedActuals";
import { marginDoubts, marginTable, type MarginTable } from "../../core/pricing/marginTable";
import type { Material } from "../../core/pricing/material";
import { orderedMaterial } from "../../core/pricing/orderedMaterial";
import { priceJob, type JobPrice, type JobToPrice } from "../../core/pricing/priceJob";
import type { RateTable } from "../../core/pricing/rates/rates";
import { withTypedActuals, type ActualRow } from "../../core/pricing/actuals/typedActuals";
import type { OrderRecord } from "../../core/purchasing/books/orderRecord";
import { marginsSheet } from "../../sheets/owner/marginsSheet";
import { priceSheet } from "../../sheets/owner/priceSheet";
import { readActualTable } from "../../tables/actualTable";
import { readAlternateTable } from "../../tables/alternateTable";
import { readRateTable, type RateReading } from "../../tables/rateTable";
import type { Drawing } from "../../workbook/drawing";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import { alternateCounts } from "./alternateCounts";
import type { WorkbookActuals } from "./jobActuals";
import { readKeptOrders } from "../orders/orderBook";
import { ownJobNames } from "../orders/ownJobNames";
import { readOwnerRanges, type OwnerRanges } from "./ranges";
import { currencyIn, measureStyleIn, type Settings } from "../settings";
import type { WorkbookTakeOff } from "../reading/workbookTakeOff";

export type WorkbookPrices = {
  readonly jobs: readonly JobPrice[];
  readonly margins: MarginTable;
  /** The sheet that the rates are from; `null` for the starter's, which are invented. */
  readonly ratesSheet: string | null;
  /** As typed on the rates sheet. */
  readonly rates: RateTable;
  /** What the figures may turn out to be, for what-if and simulation. */
  readonly ranges: OwnerRanges;
  /** Every job's estimate with what was typed of it when it was done. */
  readonly actuals: WorkbookActuals;
  /** Of the rates and prices; those of the take-off come before them. */
  readonly findings: readonly Finding[];
};

const noRates: RateTable = { usual: {}, byJob: new Map() };
const starterRates: RateReading = { rates: noRates, findings: [] };

/** What a workbook holds of its owner's besides the take-off. */
export type PriceInputs = RateReading & {
  readonly ratesSheet: string | null;
  readonly ranges: OwnerRanges;
  readonly actualRows: readonly ActualRow[];
  readonly alternateRows: readonly AlternateRow[];
  /** Of the order book. */
  readonly orders: readonly OrderRecord[];
  /** The workbook's name, which orders may have behind a job's. */
  readonly file: string;
};

/** Days after which a price is old, where the rates do not say. */
const oldAfterDays = 180;

/**
 * Prices what was taken off, by the workbook's rates sheet or the starter's rates. `today` is a date
 * serial. Error: the host could not read.
 */
export async function priceWorkbook(
  workbook: Workbook,
  takeOff: WorkbookTakeOff,
  settings: Settings,
  today: number,
): Promise<Result<WorkbookPrices, WorkbookFault>> {
  const read = await readPriceInputs(workbook);
  return read.ok ? ok(finish(priceSteps(takeOff, read.value, settings, today))) : read;
}

type Readable = Pick<Workbook, "name" | "sheets" | "read" | "readSetting">;

/** Reads the rates, the ranges, the actuals and the alternates. Error: the host could not read. */
export async function readPriceInputs(
  workbook: Readable,
): Promise<Result<PriceInputs, WorkbookFault>> {
  const read = await readOwnSheets(workbook);
  if (!read.ok) return read;
  const blocks = read.value;
  const orders = await readKeptOrders(workbook);
  if (!orders.ok) return orders;
  const own = firstOf(blocks, readRateTable);
  return ok({
    ...(own?.table ?? starterRates),
    ratesSheet: own?.sheet ?? null,
    ranges: await readOwnerRanges(workbook, blocks),
    actualRows: blocks.flatMap((block) => readActualTable(block) ?? []),
    alternateRows: blocks.flatMap((block) => readAlternateTable(block) ?? []),
    orders: orders.value,
    file: await workbook.name(),
  });
}

/** Prices the jobs, a job a step. */
export function* priceSteps(
  takeOff: WorkbookTakeOff,
  { rates, findings, ratesSheet, ranges, actualRows, alternateRows, orders, file }: PriceInputs,
  settings: Settings,
  today: number,
): Steps<WorkbookPrices> {
  const { estimate } = takeOff;
  const currency = currencyIn(settings);
  const typed = checkAlternates(alternateRows, estimate.items, currency);
  const counts = alternateCounts(takeOff, settings, typed.alternates);
  const doubts: Finding[] = [...typed.findings, ...counts.findings];
  const jobs: JobPrice[] = [];
  const estimates: JobActuals[] = [];
  const ordered: Finding[] = [];
  const ownName = ownJobNames(
    estimate.jobs.map(({ job }) => job),
    file,
  );
  for (const [index, base] of estimate.jobs.entries()) {
    const share = 1 / estimate.jobs.length;
    yield share * index;
    const { job } = base;
    const bought = (material: Material) =>
      orderedMaterial(job, material, orders, currency, ownName);
    const { material, charges, chargesHow, findings: said } = bought(base.material);
    ordered.push(...said);
    const counted = yield* between(share * index, share * (index + 1), counts.countFor(base));
    doubts.push(...counted.findings);
    const toPrice: JobToPrice = {
      job,
      takeOff: base.takeOff,
      material,
      uncounted: base.uncounted.map(({ mark }) => mark),
      alternates: counted.alternates.map((alternate) =>
        alternate.counted === null
          ? alternate
          : {
              ...alternate,
              counted: {
                ...alternate.counted,
                material: bought(alternate.counted.material).material,
              },
            },
      ),
      orderCharges: charges,
      orderChargesHow: chargesHow,
    };
    const price = priceJob(toPrice, rates, currency, measureStyleIn(settings));
    doubts.push(...notPricedAlternates(price));
    jobs.push(price);
    estimates.push(estimatedActuals(price, material));
  }
  const actuals = withTypedActuals(estimates, actualRows, currency);
  const margins = marginTable(jobs);
  const age = rates.usual.priceAge?.value;
  const mostDays = typeof age === "number" ? age : oldAfterDays;
  return {
    jobs,
    margins,
    ratesSheet,
    rates,
    ranges,
    actuals,
    findings: [
      ...findings,
      ...doubts,
      ...ordered,
      ...jobs.flatMap((job) => job.findings),
      ...marginDoubts(margins, jobs, { today, mostDays }),
      ...ranges.findings,
      ...actuals.findings,
    ],
  };
}

const notPricedAlternates = ({ job, alternates }: JobPrice): readonly Finding[] =>
  alternates
    .filter(({ notPriced }) => notPriced.length > 0)
    .map(({ name, notPriced }) =>
      makeFinding(alternateFindings, "alternate-not-priced", {
        job,
        found: notPriced.join(", "),
        values: { name, job },
      }),
    );

/** A price sheet for each job that `isIn`, a sheet a step, then the margins of all. */
export function* drawPrices(
  { jobs, margins }: WorkbookPrices,
  settings: Settings,
  isIn: (job: string) => boolean = () => true,
): Steps<readonly Drawing[]> {
  const { sign } = currencyIn(settings);
  const drawings: Drawing[] = [];
  const wanted = jobs.filter(({ job }) => isIn(job));
  for (const job of wanted) {
    yield drawings.length / wanted.length;
    drawings.push(priceSheet(job, sign, measureStyleIn(settings)));
  }
  return [...drawings, marginsSheet(margins, sign)];
}

/** The sheets of all jobs at once. */
export const priceDrawings = (prices: WorkbookPrices, settings: Settings): readonly Drawing[] =>
  finish(drawPrices(prices, settings));

/** What the sheets of the person's hold, each read once. */
async function readOwnSheets(workbook: Readable): Promise<Result<readonly Block[], WorkbookFault>> {
  const blocks: Block[] = [];
  for (const { name, visible, mark } of await workbook.sheets()) {
    if (!visible || mark !== null) continue;
    const block = await workbook.read({ kind: "sheet", sheet: name });
    if (!block.ok) return err(block.error);
    blocks.push(block.value);
  }
  return ok(blocks);
}

/** What the first block that is such a table is read as, and its sheet. */
function firstOf<Table>(
  blocks: readonly Block[],
  read: (block: Block) => Table | null,
): { readonly table: Table; readonly sheet: string } | null {
  for (const block of blocks) {
    const table = read(block);
    if (table !== null) return { table, sheet: block.sheet };
  }
  return null;
}
