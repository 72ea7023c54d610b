/** What is counted and what is not, over all jobs. */
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";

export type CountSummary = {
  /** Rows that are openings. */
  readonly rows: number;
  readonly counted: number;
  readonly uncounted: number;
  /** Stops that are not about a row that is not counted: in the kit book, the headings, the items. */
  readonly otherStops: number;
};

/** Stops that only say that there is no opening to count. */
const ofNoRow: ReadonlySet<string> = new Set(["no-openings", "schedule-empty"]);

export function countSummary({ estimate, findings }: WorkbookTakeOff): CountSummary {
  const rows = estimate.jobs.reduce((sum, job) => sum + job.rows, 0);
  const uncounted = estimate.jobs.flatMap((job) => job.uncounted);
  const ofRows = new Set(uncounted.flatMap((row) => row.findings));
  const otherStops = findings.filter(
    (finding) => finding.level === "stop" && !ofNoRow.has(finding.code) && !ofRows.has(finding),
  ).length;
  return { rows, counted: rows - uncounted.length, uncounted: uncounted.length, otherStops };
}
