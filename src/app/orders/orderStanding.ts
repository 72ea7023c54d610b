/** What the order book of the workbooks says is there for the chosen jobs. */
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import type { Standing } from "../../core/purchasing/orders/orderInput";
import type { CheckedStock } from "../../core/purchasing/offers/purchasingRows";
import type { JobPieces } from "../../core/purchasing/sizedPieces";
import { sentOrders, standingOf } from "../../core/purchasing/books/standing";
import { jobKey } from "../../core/takeoff/takeOff";
import type { ChosenJob } from "./chooseJobs";
import type { CountedFile } from "./countFile";
import { withStock, type OrderBook } from "./orderBook";

export const orderStandingFindings = {
  "book-in-two-files": {
    level: "warn",
    says: "{found} keeps an order book too, with {count} orders; that of {first} is used, and what is ordered there is not reckoned in.",
    todo: "Keep all orders in one workbook, and name it first.",
  },
  "ordered-job-unsure": {
    level: "stop",
    says: "Orders were kept for {found}, and two workbooks have a job of that name: what was ordered is taken off for neither.",
    todo: "Order for one of them at a time, or give one of the jobs another name.",
  },
} as const satisfies FindingTable;

type BookInUse = {
  /** The first workbook that keeps an order book; the first of all where none does. */
  readonly holder: CountedFile;
  readonly book: OrderBook;
  readonly standing: Standing;
  readonly findings: readonly Finding[];
};

/** `stock` is what the stock sheet in use says; `first` the first of the workbooks. */
export function bookInUse(
  [first, ...others]: readonly [CountedFile, ...(readonly CountedFile[])],
  chosen: readonly ChosenJob[],
  stock: CheckedStock | null,
  today: number,
): BookInUse {
  const keeping = [first, ...others].filter(({ book }) => book.kept.kind !== "none");
  const holder = keeping[0] ?? first;
  const book = withStock(holder.book, stock, today);
  const standing = standingOf(book.books);
  const { nameOf, unsure } = jobNames(chosen, holder);
  const named = (all: readonly JobPieces[]): readonly JobPieces[] =>
    all.map((each) => ({ ...each, job: nameOf(each.job) }));
  const ordered = new Set(
    sentOrders(book.books).flatMap(({ jobs }) => jobs.map(({ job }) => jobKey(job))),
  );
  return {
    holder,
    book,
    standing: {
      ...standing,
      supplied: named(standing.supplied),
      orderedForJobs: named(standing.orderedForJobs),
    },
    findings: [
      ...keeping
        .filter((each) => each !== holder)
        .map(({ file, book: other }) =>
          makeFinding(orderStandingFindings, "book-in-two-files", {
            found: file,
            values: { count: other.books.orders.length, first: holder.file },
          }),
        ),
      ...unsure
        .filter((job) => ordered.has(jobKey(job)))
        .map((job) =>
          makeFinding(orderStandingFindings, "ordered-job-unsure", { found: job, job }),
        ),
    ],
  };
}

/**
 * The name that a kept order's job has on this order. It was kept by its own name, or with its
 * workbook where two had the same. A name alone is the job of the workbook that keeps the book, where
 * that has one.
 */
function jobNames(
  chosen: readonly ChosenJob[],
  holder: CountedFile,
): {
  readonly nameOf: (kept: string) => string;
  /** Names that two of the chosen jobs have. */
  readonly unsure: readonly string[];
} {
  const own = new Set(holder.takeOff.estimate.jobs.map(({ job }) => jobKey(job)));
  const names = new Map<string, string>();
  const twice = new Map<string, string>();
  for (const { name, estimate, file } of chosen) {
    const key = jobKey(estimate.job);
    names.set(jobKey(`${estimate.job} (${file.file})`), name);
    if (!own.has(key) || file === holder) names.set(key, name);
    if (!own.has(key) && jobKey(name) !== key) twice.set(key, estimate.job);
  }
  const elsewhere = (kept: string): string =>
    own.has(jobKey(kept)) ? `${kept} (${holder.file})` : kept;
  return {
    nameOf: (kept) => names.get(jobKey(kept)) ?? elsewhere(kept),
    unsure: [...twice.values()],
  };
}
