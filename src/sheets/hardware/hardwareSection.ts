/** One job on the hardware sheet: what was counted and what was not, its lines by family, its totals. */
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { addedFamily, familyOf } from "../../core/pricing/material";
import { sizeTexts } from "../../core/takeoff/sizeTexts";
import type { DrawnRow } from "../../workbook/drawing";
import { blankRow, text } from "../cells";
import { joinedRow } from "../fittedRow";
import { addedRows } from "./hardwareAdded";
import { band, type HardwareLayout } from "./hardwareLayout";
import { lineRow } from "./hardwareLine";
import { strayRows } from "./hardwareStrays";
import { totalRow } from "./hardwareTotals";
import { shownWeightOf } from "./hardwareWeights";
import { countedWords, partlyWords, uncountedAddedWords, uncountedWords } from "../jobWords";

/** The rows of a job, the first of which stands in row `start` (from zero) of the sheet. */
export function jobSection(
  layout: HardwareLayout,
  job: JobEstimate,
  start: number,
): readonly DrawnRow[] {
  const { material } = job;
  const rows: DrawnRow[] = [];
  const widths = layout.columns.map(({ width }) => width);
  const here = (): number => start + rows.length;
  const say = (words: string, look: "stop" | "warn"): void => {
    if (words !== "") rows.push(joinedRow(words, look, widths));
  };

  rows.push(band(layout, "total", { item: text(`${job.job}: ${countedWords(job)}`) }));
  if (job.uncounted.length > 0) say(uncountedWords(job), "stop");
  for (const partly of job.partly) say(partlyWords(partly), "stop");
  say(uncountedAddedWords(job), "stop");

  const sizeText = sizeTexts(job.takeOff.lines, layout.wish.lengths);
  const subtotals: number[] = [];
  for (const { family, cost } of material.families) {
    if (family === addedFamily) continue;
    const lines = material.lines.filter((line) => familyOf(line) === family);
    rows.push(band(layout, "group", { item: text(family) }));
    const lineRows = lines.map((line) => {
      const row = here();
      rows.push(lineRow(layout, job.job, line, sizeText, row));
      return row;
    });
    subtotals.push(here());
    const weight = shownWeightOf(layout, lines);
    rows.push(totalRow(layout, "muted", `${family}, together`, lineRows, { cost, weight }));
  }
  const added = addedRows(layout, job, here());
  rows.push(...added.rows);
  if (added.subtotal !== null) subtotals.push(added.subtotal);

  const priced = material.unpriced.length > 0 ? " that is priced" : "";
  const sums = { cost: material.total ?? 0, weight: shownWeightOf(layout, material.lines) };
  rows.push(totalRow(layout, "total", `${job.job}: material${priced}`, subtotals, sums));
  const { unpriced, unweighed } = material;
  if (layout.wish.withCosts && unpriced.length > 0) {
    say(`Not priced, and not in the total: ${unpriced.join(", ")}`, "warn");
  }
  if (unweighed.length > 0) {
    say(`Not weighed, and not in the total: ${unweighed.join(", ")}`, "warn");
  }
  rows.push(...strayRows(layout, job), blankRow);
  return rows;
}
