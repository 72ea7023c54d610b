/** Formula errors of one take as findings about the opening and the cell that caused them. */
import { makeFinding, type Finding } from "../base/finding";
import type { FormulaError } from "../formulas/value";
import type { BookFormula } from "../kitbook/kitBook";
import { slotsText, type ShowLength } from "./describe";
import { cellFinder, openingAt, type Take } from "./take";
import { takeOffFindings } from "./takeOffFindings";

/** Told of a finding about one opening of the take. */
export type Report = (row: number, finding: Finding) => void;

/** Told of an error that a formula came to for one opening. */
export type ReportError = (row: number, formula: BookFormula, error: FormulaError) => void;

/** Reports each error once for an opening, however many rows of the book run into it. */
export function errorReporter(take: Take, show: ShowLength, report: Report): ReportError {
  const seen = new Set<string>();
  return (row, formula, error) => {
    const key = `${row} ${error.code} ${error.message}`;
    if (seen.has(key)) return;
    seen.add(key);
    report(
      row,
      makeFinding(takeOffFindings, codeOf(error), {
        ...aboutFormula(take, formula)(row),
        found: slotsText(take, formula.compiled.slots, row, show),
        values: { formula: formula.text, error: error.message },
      }),
    );
  };
}

/** The place, job and mark of a finding about what a formula says of an opening, by row. */
export function aboutFormula(
  take: Take,
  formula: BookFormula,
): (row: number) => Pick<Finding, "place" | "job" | "mark"> {
  const cellOf = cellFinder(take, formula);
  return (row) => {
    const { job, mark } = openingAt(take, row);
    return { place: cellOf(row), job, mark };
  };
}

function codeOf(error: FormulaError): keyof typeof takeOffFindings {
  if (error.code === "missing") return "size-missing";
  return error.code === "chart" ? "not-in-chart" : "cannot-work-out";
}
