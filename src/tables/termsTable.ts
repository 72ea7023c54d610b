/** A sheet of quotation terms: a row for each term, what kind it is, for which job, and its text. */
import { cellText, isBlank, type Block, type TypedCell } from "../core/base/cell";
import { makeFinding, type Finding, type FindingTable } from "../core/base/finding";
import { nearestName, normalName } from "../core/formulas/names";
import { termKinds, type TypedTerm } from "../core/pricing/quotationTerms";

/** The headings of a terms sheet, in order. */
export const termHeadings = ["Quotation term", "Job", "Text"] as const;

export const termTableFindings = {
  "term-unknown": {
    level: "warn",
    says: "{found} is no quotation term that is known here; the row is not used.",
    todo: "{guess}",
  },
} as const satisfies FindingTable;

export type TermsReading = {
  readonly terms: readonly TypedTerm[];
  readonly findings: readonly Finding[];
};

/** How far down a sheet its headings may stand. */
const headingRows = 40;

/** `null` where the block has no row with the headings Quotation term and Text. */
export function readTermsTable({
  sheet,
  row: top,
  column: left,
  rows,
}: Block): TermsReading | null {
  const [termHeading, jobHeading, textHeading] = termHeadings.map((words) => normalName(words));
  const named = rows
    .slice(0, headingRows)
    .map((row) => row.map((cell) => normalName(cellText(cell))));
  const heading = named.findIndex(
    (row) => row.includes(termHeading ?? "") && row.includes(textHeading ?? ""),
  );
  const headings = named[heading];
  if (headings === undefined) return null;
  const column = (words: string | undefined): number => headings.indexOf(words ?? "");
  const [kindColumn, jobColumn, textColumn] = [
    column(termHeading),
    column(jobHeading),
    column(textHeading),
  ];
  const terms: TypedTerm[] = [];
  const findings: Finding[] = [];
  for (const [index, row] of rows.entries()) {
    const words = cellText(row[kindColumn] ?? null).trim();
    if (index <= heading || words === "" || isBlank(row[textColumn] ?? null)) continue;
    const at = (of: number): TypedCell => ({
      value: row[of] ?? null,
      place: { sheet, row: top + index, column: left + of },
    });
    const kind = termKinds.find(({ label }) => normalName(label) === normalName(words));
    if (kind === undefined) {
      findings.push(unknownTerm(words, at(kindColumn)));
      continue;
    }
    const job = cellText(row[jobColumn] ?? null)
      .trim()
      .toLowerCase();
    terms.push({ kind: kind.key, job, cell: at(textColumn) });
  }
  return { terms, findings };
}

function unknownTerm(found: string, { place }: TypedCell): Finding {
  const labels = termKinds.map(({ label }) => label);
  const near = nearestName(found, labels);
  const guess = near === undefined ? `Use one of: ${labels.join(", ")}.` : `Did you mean ${near}?`;
  return makeFinding(termTableFindings, "term-unknown", { place, found, values: { guess } });
}
