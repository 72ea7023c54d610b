/** Workbooks with jobs and purchasing sheets, for tests. All of it is invented. */
import { countFile, type CountedFile } from "../../src/app/countFile";
import { orderJobs, type JobsOrder, type OrderWish } from "../../src/app/orderJobs";
import { cutPlan } from "../../src/core/purchasing/cutting/cutPlan";
import { demoWorkbook, workbookOf, type TypedSheets } from "./typedWorkbook";

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

export const wishOf = (wish: Partial<OrderWish> = {}): OrderWish => ({
  jobs: null,
  kitBooksDecided: false,
  itemsDecided: false,
  today: 46_340,
  planCuts: (problem) => cutPlan(problem, { solver: null }),
  ...wish,
});

export function orderOf(files: readonly CountedFile[], wish: Partial<OrderWish> = {}): JobsOrder {
  const order = orderJobs(files, wishOf(wish));
  if (!order.ok) throw new Error(order.error);
  return order.value;
}
