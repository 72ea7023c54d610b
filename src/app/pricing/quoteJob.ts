/** The quotation of one job of a workbook, as a workbook of its own that holds nothing else. */
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import { err, ok, type Result } from "../../core/base/result";
import { inches } from "../../core/base/units";
import type { Opening } from "../../core/openings/opening";
import { loadRules } from "../../core/pricing/loads/openingLoads";
import { quotation, type QuotedOpening } from "../../core/pricing/quotation";
import { termsFor } from "../../core/pricing/quotationTerms";
import { rateReader } from "../../core/pricing/rates/rates";
import { quotationSheet } from "../../sheets/owner/quotationSheet";
import { readTermsTable, type TermsReading } from "../../tables/termsTable";
import type { Drawing } from "../../workbook/drawing";
import { drawnWorkbook } from "../../workbook/drawnWorkbook";
import type { WorkbookSnapshot } from "../../workbook/snapshot";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import type { WorkbookPrices } from "./priceWorkbook";
import { currencyIn, lengthWriter, type Settings } from "../settings";
import type { WorkbookTakeOff } from "../reading/workbookTakeOff";

const quoteFindings = {
  "quoted-without-openings": {
    level: "warn",
    says: "The quotation leaves out openings that could not be counted, and says so: {found}.",
    todo: "Mend their rows and make the quotation again.",
  },
  "terms-are-starter": {
    level: "warn",
    says: "The quotation has the starter's terms, which are invented.",
    todo: "Type your own on a sheet with the headings Quotation term, Job, Text.",
  },
} as const satisfies FindingTable;

export type JobQuotation = {
  /** The quotation as a sheet, which is the only one of `workbook`. */
  readonly drawing: Drawing;
  readonly workbook: WorkbookSnapshot;
  readonly findings: readonly Finding[];
};

/** The name of the workbook inside its file: nothing of the firm's own file name or path. */
const quotationName = "quotation.xlsx";

/**
 * Quotes one job, named in any case, on `today`. Error: why it cannot be quoted, in plain words. A
 * job of which an item or a rate has no price is not quoted: the price would be too low. Openings that
 * are stopped, such as by a hanging load over what its supplier allows, are named as not in the price.
 */
export async function quoteJob(
  workbook: Workbook,
  takeOff: WorkbookTakeOff,
  prices: WorkbookPrices,
  settings: Settings,
  wanted: { readonly job: string; readonly today: number },
): Promise<Result<JobQuotation, string>> {
  const { estimate } = takeOff;
  const key = wanted.job.trim().toLowerCase();
  const price = prices.jobs.find(({ job }) => job.toLowerCase() === key);
  const counted = estimate.jobs.find(({ job }) => job.toLowerCase() === key);
  if (price === undefined || counted === undefined) {
    const names = prices.jobs.map(({ job }) => job).join("; ");
    return err(`There is no job ${wanted.job}. Jobs of this workbook: ${names}.`);
  }
  const { job, rollUp } = price;
  const marks = counted.uncounted.map(({ mark }) => mark);
  const leftOut = new Set(marks.map((mark) => `opening ${mark}`));
  const missing = rollUp.notPriced.filter((name) => !leftOut.has(name));
  if (missing.length > 0) {
    return err(`${job} cannot be quoted: not in its price are ${missing.join(", ")}.`);
  }
  if (counted.takeOff.openings.length === counted.takeOff.stopped.length) {
    const doubts = counted.uncounted.flatMap((row) => row.findings);
    const why = doubts.find(({ level }) => level === "stop");
    const because = why === undefined ? "" : ` ${why.message}`;
    return err(`${job} cannot be quoted: none of its openings is counted.${because}`);
  }
  const entered = rateReader(prices.rates, job, currencyIn(settings));
  loadRules(entered);
  const doubts = [...price.findings, ...entered.findings];
  const stopped = doubts.find(({ level }) => level === "stop");
  if (stopped !== undefined) return err(`${job} cannot be quoted: ${stopped.message}`);
  const read = await readTerms(workbook);
  if (!read.ok) return err(read.error.message);
  const { terms, findings } = termsFor(read.value?.terms ?? null, job, wanted.today);
  const excluded = marks.length === 0 ? [] : [`Openings not in this price: ${marks.join(", ")}`];
  const stops = new Set(counted.takeOff.stopped);
  const quoted = quotation(
    { ...terms, exclusions: [...excluded, ...terms.exclusions] },
    counted.takeOff.openings
      .filter((opening) => !stops.has(opening))
      .map((opening) => quotedOpening(opening, settings)),
    rollUp,
    // One that is only a least is not offered; the prices say so.
    price.alternates.filter(({ notPriced }) => notPriced.length === 0),
  );
  const drawing = quotationSheet(quoted, currencyIn(settings).sign);
  return ok({
    drawing,
    workbook: drawnWorkbook(quotationName, [drawing]),
    findings: [
      ...(read.value?.findings ?? [makeFinding(quoteFindings, "terms-are-starter", { job })]),
      ...findings,
      ...(marks.length === 0
        ? []
        : [
            makeFinding(quoteFindings, "quoted-without-openings", { job, found: marks.join(", ") }),
          ]),
    ],
  });
}

function quotedOpening(
  { mark, quantity, type, fields }: Opening,
  settings: Settings,
): QuotedOpening {
  const write = lengthWriter(settings);
  const { width = null, height = null, hand = null } = fields;
  const sides = [width, height].flatMap((side) =>
    typeof side === "number" ? [write(inches(side))] : [],
  );
  return {
    mark,
    type,
    size: sides.join(" x "),
    hand: typeof hand === "string" ? hand.trim() : "",
    quantity,
  };
}

async function readTerms(workbook: Workbook): Promise<Result<TermsReading | null, WorkbookFault>> {
  for (const { name, visible, mark } of await workbook.sheets()) {
    if (!visible || mark !== null) continue;
    const block = await workbook.read({ kind: "sheet", sheet: name });
    if (!block.ok) return err(block.error);
    const read = readTermsTable(block.value);
    if (read !== null) return ok(read);
  }
  return ok(null);
}
