/** Jobs for packing lists, labels and loading lists, and what stands on a drawing as plain values. */
import type { CellValue } from "../../src/core/base/cell";
import { correctJob } from "../../src/core/corrections/correctJob";
import { nothingTyped, type Correction } from "../../src/core/corrections/correction";
import { lineName } from "../../src/core/corrections/rowName";
import type { Estimate } from "../../src/core/estimate/estimate";
import type { JobEstimate } from "../../src/core/estimate/jobEstimate";
import type { LengthStyle } from "../../src/core/lengths/writeLength";
import { priceMaterial } from "../../src/core/pricing/material";
import { shownValue, type Drawing } from "../../src/workbook/drawing";
import { showLength } from "../core/takeoff/notation";

export const lengths: LengthStyle = { kind: "feet-inches", denominator: 16 };

/** The first job of an estimate. */
export function firstJob({ jobs }: Estimate): JobEstimate {
  const [job] = jobs;
  if (job === undefined) throw new Error("No job");
  return job;
}

/** The job with `+3` and the like typed beside items without a size, and a line added by hand. */
export function corrected(
  { items }: Estimate,
  job: JobEstimate,
  changes: Readonly<Record<string, string>>,
  added: { readonly item: string; readonly quantity: string } | null = null,
): JobEstimate {
  const typed: Correction[] = Object.entries(changes).map(([item, correction]) => ({
    name: lineName(job.job, { item, size: [] }),
    typed: { ...nothingTyped, correction, reason: "two were bent", by: "AB" },
    counted: null,
  }));
  if (added !== null) {
    typed.push({
      name: { kind: "added", job: job.job, number: 1 },
      typed: { ...nothingTyped, ...added, reason: "asked for on site" },
      counted: null,
    });
  }
  const rules = { unit: "in", showLength } as const;
  const corrections = correctJob(job.takeOff, typed, rules, () => undefined);
  return { ...job, corrections, material: priceMaterial(corrections.lines, items) };
}

/** The values of a drawing, row by row. */
export const valuesOf = ({ rows }: Pick<Drawing, "rows">): readonly (readonly CellValue[])[] =>
  rows.map(({ cells }) => cells.map((cell) => (cell === null ? null : shownValue(cell))));

/** Every text of a drawing. */
export const textsOf = (drawing: Pick<Drawing, "rows">): readonly string[] =>
  valuesOf(drawing)
    .flat()
    .filter((value) => typeof value === "string");
