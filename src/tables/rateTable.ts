/**
 * A rates sheet -> a firm's rates: a row for each rate, a column for the usual value, and a column for
 * each job that differs, headed by the job's name.
 */
import { cellText, isBlank, type Block, type TypedCell } from "../core/base/cell";
import { makeFinding, type Finding, type FindingTable } from "../core/base/finding";
import { nearestName, normalName } from "../core/formulas/names";
import { rateRows, type RateKey } from "../core/pricing/rates/rateRows";
import type { RateTable } from "../core/pricing/rates/rates";

/** The headings of the rates sheet, in order; the jobs' columns follow. */
export const rateHeadings = ["Rate", "Unit", "What it means", "Usual"] as const;

export const rateTableFindings = {
  "rate-unknown": {
    level: "warn",
    says: "{found} is no rate that is known here; the row is not used.",
    todo: "{guess}",
  },
} as const satisfies FindingTable;

export type RateReading = { readonly rates: RateTable; readonly findings: readonly Finding[] };

/** `null` where the block has no row that holds the headings Rate and Usual. */
export function readRateTable(block: Block): RateReading | null {
  const isHeading = (text: string, word: string): boolean => normalName(text) === word;
  const headingIndex = block.rows.slice(0, 40).findIndex((row) => {
    const texts = row.map(cellText);
    return (
      texts.some((text) => isHeading(text, "rate")) &&
      texts.some((text) => isHeading(text, "usual"))
    );
  });
  const headings = block.rows[headingIndex]?.map((cell) => cellText(cell).trim());
  if (headings === undefined) return null;
  const rateColumn = headings.findIndex((text) => isHeading(text, "rate"));
  const unitColumn = headings.findIndex((text) => isHeading(text, "unit"));
  const usualColumn = headings.findIndex((text) => isHeading(text, "usual"));
  const jobColumns = headings.flatMap((text, column) =>
    column > usualColumn && text !== "" ? [{ job: text.toLowerCase(), column }] : [],
  );

  const keys = new Map(rateRows.map(({ key, label }) => [normalName(label), key]));
  const usual: Partial<Record<RateKey, TypedCell>> = {};
  const units: Partial<Record<RateKey, TypedCell>> = {};
  const byJob = new Map<string, Partial<Record<RateKey, TypedCell>>>(
    jobColumns.map(({ job }) => [job, {}]),
  );
  const findings: Finding[] = [];
  for (const [index, row] of block.rows.entries()) {
    const label = cellText(row[rateColumn] ?? null).trim();
    if (index <= headingIndex || label === "") continue;
    const at = (column: number): TypedCell => ({
      value: row[column] ?? null,
      place: { sheet: block.sheet, row: block.row + index, column: block.column + column },
    });
    const key = keys.get(normalName(label));
    if (key === undefined) {
      // A heading of a group stands alone in its row.
      if (row.every((cell, column) => column === rateColumn || isBlank(cell))) continue;
      const near = nearestName(
        label,
        rateRows.map((rate) => rate.label),
      );
      const guess =
        near === undefined
          ? "Use the labels of the starter's rates sheet."
          : `Did you mean ${near}?`;
      findings.push(
        makeFinding(rateTableFindings, "rate-unknown", {
          place: at(rateColumn).place,
          found: label,
          values: { guess },
        }),
      );
      continue;
    }
    usual[key] = at(usualColumn);
    if (unitColumn >= 0) units[key] = at(unitColumn);
    for (const { job, column } of jobColumns) {
      const typed = byJob.get(job);
      if (typed !== undefined) typed[key] = at(column);
    }
  }
  const rates: RateTable = { usual, byJob, units };
  return { rates, findings };
}
