/**
 * One order for jobs of several workbooks. Read this first.
 *
 * 1. Each workbook is taken off by itself, corrections and all.
 * 2. What workbooks say differently is found: jobs of one name, kit books, items, purchasing sheets.
 * 3. The jobs are chosen; a name that two workbooks have is left out until the person says which.
 * 4. Their lines become demands, and the firm's purchasing sheets what they are covered from.
 * 5. The order is planned (`orderSearch.ts`), and with what was prepared makes the order.
 */
import type { Finding } from "../../core/base/finding";
import { err, ok, type Result } from "../../core/base/result";
import { itemKey } from "../../core/pricing/item";
import { fiveDayWeek } from "../../core/purchasing/orders/dates";
import { madeToSize } from "./madeToSize";
import { checkOffers } from "../../core/purchasing/offers/offers";
import type { OrderInput } from "../../core/purchasing/orders/orderInput";
import type { OrderPlan } from "../../core/purchasing/orders/orderPlan";
import { checkOrderRules } from "../../core/purchasing/orders/orderRules";
import {
  checkJobDates,
  checkStock,
  checkTerms,
  type CheckedStock,
} from "../../core/purchasing/offers/purchasingRows";
import type { OrderPattern } from "../../core/purchasing/books/orderNumber";
import { noSpares } from "../../core/purchasing/spares";
import { jobKey } from "../../core/takeoff/takeOff";
import { chooseJobs, type ChosenJob } from "./chooseJobs";
import { differences, type Deciding } from "./orderDifferences";
import { demandsOf, typedSparesOf } from "./orderDemands";
import type { CountedFile } from "./countFile";
import type { OrderBook } from "./orderBook";
import { bookInUse } from "./orderStanding";
import { fileWith, otherTables } from "./orderTables";
import { currencyIn, type Settings } from "../settings";

export type OrderWish = Deciding & {
  /** Each a job's name, or `FILE:JOB`; `null` for all jobs. */
  readonly jobs: readonly string[] | null;
  /** A date serial. */
  readonly today: number;
};

/** A finding with the workbook that it is about; the empty text for none. */
export type FileFinding = { readonly file: string; readonly finding: Finding };

export type JobsOrder = {
  readonly plan: OrderPlan;
  readonly input: OrderInput;
  /** Of the first workbook: how lengths and money are written. */
  readonly settings: Settings;
  readonly chosen: readonly ChosenJob[];
  readonly findings: readonly FileFinding[];
  /** Whether everything of the chosen jobs is counted, decided and on the order. */
  readonly complete: boolean;
  /** The order book that it was worked out with, and the name of its workbook. */
  readonly book: OrderBook;
  readonly bookFile: string;
  /** What the stock sheet in use says; `null` where there is none. */
  readonly stock: CheckedStock | null;
  /** How kept orders are numbered. */
  readonly numbers: OrderPattern;
  /** The name of the workbook whose offers are used; the empty text where none has any. */
  readonly offersFile: string;
};

/** Everything up to the planning itself: what is asked for, and what is doubtful about it. */
export type PreparedOrder = Omit<JobsOrder, "plan" | "complete">;

/** Steps 1 to 4. Error: why the wish cannot be met, such as a job that is nowhere. */
export function prepareOrder(
  files: readonly CountedFile[],
  wish: OrderWish,
): Result<PreparedOrder, string> {
  const [firstFile, ...otherFiles] = files;
  if (firstFile === undefined) return err("No workbook is named.");
  const choice = chooseJobs(files, wish.jobs);
  if (!choice.ok) return choice;
  const { chosen } = choice.value;
  const { settings } = firstFile;

  const found: FileFinding[] = [];
  const keep = (file: string, findings: readonly Finding[]): void => {
    found.push(...findings.map((finding) => ({ file, finding })));
  };
  for (const { file, takeOff } of files) {
    const jobs = new Set(
      chosen.filter((each) => each.file.file === file).map(({ estimate }) => jobKey(estimate.job)),
    );
    keep(
      file,
      takeOff.findings.filter(({ job }) => job === undefined || jobs.has(jobKey(job))),
    );
  }
  keep("", [...choice.value.findings, ...differences(files, chosen, wish), ...otherTables(files)]);

  const { findings, ...basis } = orderInput([firstFile, ...otherFiles], chosen, wish);
  return ok({ ...basis, settings, chosen, findings: [...found, ...findings] });
}

/** The order that a plan makes of what was prepared. */
export function plannedOrder(prepared: PreparedOrder, plan: OrderPlan): JobsOrder {
  const findings = [
    ...prepared.findings,
    ...plan.findings.map((finding) => ({
      // A cell that the plan speaks of is an offer's.
      file: finding.place === null ? "" : prepared.offersFile,
      finding,
    })),
  ];
  return {
    ...prepared,
    plan,
    findings,
    complete:
      plan.complete &&
      findings.every(({ finding }) => finding.level !== "stop") &&
      prepared.chosen.every(({ estimate }) => estimate.uncounted.length === 0),
  };
}

type InputAndBasis = Omit<PreparedOrder, "settings" | "chosen">;

function orderInput(
  files: readonly [CountedFile, ...(readonly CountedFile[])],
  chosen: readonly ChosenJob[],
  { today }: Pick<OrderWish, "today">,
): InputAndBasis {
  const [{ settings }] = files;
  const findings: FileFinding[] = [];
  const said = <Value>(
    holder: CountedFile | null,
    checked: { readonly value: Value; readonly findings: readonly Finding[] },
  ): Value => {
    const file = holder?.file ?? "";
    findings.push(...checked.findings.map((finding) => ({ file, finding })));
    return checked.value;
  };
  const unitOf = (holder: CountedFile | null): Settings["unit"] =>
    (holder?.settings ?? settings).unit;

  const ruled = fileWith(files, "rules");
  const rules = said(ruled, checkOrderRules(ruled?.tables.rules ?? [], unitOf(ruled)));
  const selling = fileWith(files, "offers");
  const currency = currencyIn(selling?.settings ?? settings);
  const checkedOffers = checkOffers(selling?.tables.offers ?? [], {
    currency,
    unit: unitOf(selling),
    today,
    staleAfterDays: rules.oldPriceDays,
  });
  const offers = said(selling, { value: checkedOffers.offers, findings: checkedOffers.findings });
  const stocked = fileWith(files, "stock");
  const stockRows = stocked?.tables.stock ?? null;
  const stock = stockRows === null ? null : said(stocked, checkStock(stockRows, unitOf(stocked)));
  const { holder, book, standing, ...doubts } = bookInUse(files, chosen, stock, today);
  said(holder, { value: null, findings: [...book.findings, ...doubts.findings] });
  const paid = fileWith(files, "suppliers");
  const terms = said(paid, checkTerms(paid?.tables.suppliers ?? [], currency));
  const dates = new Map(
    files.map((file) => [file, said(file, checkJobDates(file.tables.dates ?? []))]),
  );

  const demands = chosen.flatMap((job) => demandsOf(job));
  const itemOf = (code: string) =>
    chosen
      .map(({ file }) => file.takeOff.estimate.items.get(itemKey(code)))
      .find((item) => item !== undefined) ?? null;
  return {
    input: {
      jobs: chosen.map(({ name, file, estimate }) => ({
        job: name,
        ...(dates.get(file)?.get(jobKey(estimate.job)) ?? { needBy: null, shipTo: "" }),
      })),
      demands,
      standing,
      offers: madeToSize(offers, demands, (code) => itemOf(code)?.unit ?? null),
      terms,
      spares: (code) => {
        const item = itemOf(code);
        return item === null ? noSpares : { ...item.spares, per: rules.sparesPer };
      },
      typedSpares: chosen.flatMap((job) => typedSparesOf(job)),
      saw: () => rules.saw,
      timing: { calendar: fiveDayWeek(rules.holidays), today, bufferDays: rules.bufferDays },
      leaveOutLate: rules.leaveOutLate,
    },
    findings,
    book,
    bookFile: holder.file,
    stock,
    numbers: rules.numbers,
    offersFile: selling?.file ?? "",
  };
}
