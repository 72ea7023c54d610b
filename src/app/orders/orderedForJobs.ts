/** What the workbook's own order book says is ordered for its jobs. */
import { ok, type Result } from "../../core/base/result";
import { standingOf } from "../../core/purchasing/books/standing";
import { orderedOf, type OrderedPieces } from "../../core/revisions/ordered";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import { readKeptBook } from "./orderBook";
import { ownJobNames } from "./ownJobNames";
import type { Settings } from "../settings";
import type { WorkbookTakeOff } from "../reading/workbookTakeOff";

/**
 * Of all jobs that the book has orders for, also those of other workbooks; nothing where no order is
 * kept, and `null` where the book cannot be read. `today` is a date serial. Error: the host could not
 * read.
 */
export async function orderedForJobs(
  workbook: Workbook,
  { estimate }: WorkbookTakeOff,
  settings: Settings,
  today: number,
): Promise<Result<readonly OrderedPieces[] | null, WorkbookFault>> {
  const book = await readKeptBook(workbook, settings, today);
  if (!book.ok) return book;
  if (book.value.kept.kind === "damaged") return ok(null);
  const file = await workbook.name();
  const ownName = ownJobNames(
    estimate.jobs.map(({ job }) => job),
    file,
  );
  return ok(
    orderedOf(standingOf(book.value.books)).map((each) => ({
      ...each,
      job: ownName(each.job),
    })),
  );
}
