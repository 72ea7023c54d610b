/** What the sheets said when they were last written, kept in the workbook. */
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { numberStyle, writeSize } from "../../core/lengths/writeLength";
import type { Currency } from "../../core/money/currency";
import { itemKey } from "../../core/pricing/item";
import { jobKey } from "../../core/takeoff/takeOff";
import type { Workbook } from "../../workbook/workbook";
import { jsonValue } from "../jsonValue";

/** One job as its sheet had it. `lines` is the quantity by item and size. */
export type JobSummary = {
  readonly job: string;
  readonly counted: number;
  readonly total: number | null;
  readonly lines: Readonly<Record<string, number>>;
};

export type WrittenSummary = { readonly currency: string; readonly jobs: readonly JobSummary[] };

const settingKey = "lastWritten";

export const summaryOf = (jobs: readonly JobEstimate[], currency: Currency): WrittenSummary => ({
  currency: currency.code,
  jobs: jobs.map(({ job, rows, uncounted, material }) => ({
    job,
    counted: rows - uncounted.length,
    total: material.total,
    lines: Object.fromEntries(
      material.lines.map(({ line }) => [
        `${itemKey(line.item)} ${writeSize(line.size, numberStyle)}`.trim(),
        line.quantity,
      ]),
    ),
  })),
});

/** `null` where nothing was written, or by a version that kept it in another way. */
export async function readLastWritten(workbook: Workbook): Promise<WrittenSummary | null> {
  const text = await workbook.readSetting(settingKey);
  if (text === null) return null;
  const read = jsonValue(text);
  return isSummary(read) ? read : null;
}

/** Keeps what was written now, with the jobs that were written before and not now as they were. */
export const keepLastWritten = (
  workbook: Workbook,
  before: WrittenSummary | null,
  now: WrittenSummary,
): ReturnType<Workbook["writeSetting"]> => {
  const keys = new Set(now.jobs.map(({ job }) => jobKey(job)));
  const others = before?.currency === now.currency ? before.jobs : [];
  const jobs = [...others.filter(({ job }) => !keys.has(jobKey(job))), ...now.jobs];
  return workbook.writeSetting(settingKey, JSON.stringify({ currency: now.currency, jobs }));
};

function isSummary(value: unknown): value is WrittenSummary {
  if (typeof value !== "object" || value === null) return false;
  const { currency, jobs } = value as Readonly<Record<string, unknown>>;
  return typeof currency === "string" && Array.isArray(jobs) && jobs.every(isJobSummary);
}

function isJobSummary(value: unknown): boolean {
  if (typeof value !== "object" || value === null) return false;
  const { job, counted, total, lines } = value as Readonly<Record<string, unknown>>;
  return (
    typeof job === "string" &&
    Number.isSafeInteger(counted) &&
    (total === null || Number.isSafeInteger(total)) &&
    typeof lines === "object" &&
    lines !== null &&
    Object.values(lines).every(Number.isSafeInteger)
  );
}
