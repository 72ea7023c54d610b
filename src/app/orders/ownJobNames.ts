/** The jobs of a workbook by the names that kept orders have for them. */
import { jobKey } from "../../core/takeoff/takeOff";

/**
 * The workbook's own name of a job that an order kept. Where two workbooks had a job of one name, the
 * order kept it with its workbook, as `Dock (a.xlsx)`. A job of another workbook keeps the name that
 * it has.
 */
export function ownJobNames(jobs: readonly string[], file: string): (kept: string) => string {
  const own = new Map([
    ...jobs.map((job) => [jobKey(`${job} (${file})`), job] as const),
    ...jobs.map((job) => [jobKey(job), job] as const),
  ]);
  return (kept) => own.get(jobKey(kept)) ?? kept;
}
