/** Workbooks with jobs and purchasing sheets, for tests. All of it is invented. */
import { countFile, type CountedFile } from "../../../src/app/orders/countFile";
import {
  plannedOrder,
  prepareOrder,
  type JobsOrder,
  type OrderWish,
} from "../../../src/app/orders/orderJobs";
import { lengthStyleOf } from "../../../src/app/settings";
import { ok, type Result } from "../../../src/core/base/result";
import { writeSize } from "../../../src/core/lengths/writeLength";
import { cutPlan } from "../../../src/core/purchasing/cutting/cutPlan";
import { planOrder } from "../../../src/core/purchasing/orders/order";
import type { PlanCuts } from "../../../src/core/purchasing/orders/orderCuts";
import { demoWorkbook, workbookOf, type TypedSheets } from "../typedWorkbook";

export const headings = "Job,Mark,Qty,Type,Width,Height,Post height,Tail post,Floor".split(",");

/** A schedule with one sliding door of that job. */
export const doorOf = (job: string): TypedSheets[string] => [
  headings,
  [job, "X-1", 2, "sliding door", "4'", "7'", "8'", "yes", "concrete"],
];

export async function countedFile(file: string, sheets: TypedSheets): Promise<CountedFile> {
  const counted = await countFile({ file, workbook: workbookOf(sheets) }, 46_340);
  if (!counted.ok) throw new Error(counted.error.message);
  return counted.value;
}

export async function countedDemo(): Promise<CountedFile> {
  const counted = await countFile({ file: "demo.xlsx", workbook: await demoWorkbook() }, 46_340);
  if (!counted.ok) throw new Error(counted.error.message);
  return counted.value;
}

type WishWithCuts = OrderWish & { readonly planCuts: PlanCuts };

export const wishOf = (wish: Partial<WishWithCuts> = {}): WishWithCuts => ({
  jobs: null,
  kitBooksDecided: false,
  itemsDecided: false,
  today: 46_340,
  planCuts: (problem) => cutPlan(problem, { solver: null }),
  ...wish,
});

/** Prepared and planned at once. */
export function orderJobs(
  files: readonly CountedFile[],
  wish: WishWithCuts,
): Result<JobsOrder, string> {
  const prepared = prepareOrder(files, wish);
  if (!prepared.ok) return prepared;
  const style = lengthStyleOf(prepared.value.settings);
  const plan = planOrder(prepared.value.input, wish.planCuts, (size) => writeSize(size, style));
  return ok(plannedOrder(prepared.value, plan));
}

export function orderOf(
  files: readonly CountedFile[],
  wish: Partial<WishWithCuts> = {},
): JobsOrder {
  const order = orderJobs(files, wishOf(wish));
  if (!order.ok) throw new Error(order.error);
  return order.value;
}
