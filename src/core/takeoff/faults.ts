/** Formula errors of one take as findings about the opening and the cell that caused them. */
import { makeFinding, type Finding } from "../base/finding";
import { inches } from "../base/units";
import { shown } from "../formulas/coerce";
import { answersLength } from "../formulas/lengthAnswer";
import type { FormulaNode } from "../formulas/tree";
import type { ChartMiss, FormulaError, Value } from "../formulas/value";
import type { BookFormula } from "../kitbook/kitBook";
import { fieldsText, type ShowLength } from "./describe";
import { cellFinder, fieldsBehind, openingAt, type Take } from "./take";
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
    report(row, errorFinding(take, show, row, formula, error));
  };
}

/** An error that a formula came to for one opening, as a finding about it. */
export const errorFinding = (
  take: Take,
  show: ShowLength,
  row: number,
  formula: BookFormula,
  error: FormulaError,
): Finding =>
  makeFinding(takeOffFindings, codeOf(error), {
    ...aboutFormula(take, formula)(row),
    found: fieldsText(take, fieldsBehind(take, formula), row, show),
    values: { formula: formula.text, error: clauseOf(take, error, show) },
  });

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

/** The error as the end of a sentence: no full stop, no capital but that of a name. */
const clauseOf = (take: Take, error: FormulaError, show: ShowLength): string =>
  error.chart === undefined
    ? error.message.replace(/\.$/, "").replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase())
    : chartMissText(take, error.chart, show);

/** `the chart "track plate" has no entry for 7'-0 3/16" by 7'-0"`: lengths as the user writes them. */
function chartMissText(take: Take, { node, down, across }: ChartMiss, show: ShowLength): string {
  // A size stands before a heading of the same name.
  const isLength = (name: string): boolean =>
    take.type.slots.findLast((slot) => slot.name === name)?.kind === "length";
  const written = (value: Value, key: FormulaNode): string =>
    typeof value === "number" && answersLength(key, isLength) ? show(inches(value)) : shown(value);
  const keys = [
    written(down, node.down),
    ...(node.across === null ? [] : [written(across, node.across)]),
  ];
  return `the chart "${node.chart}" has no entry for ${keys.join(" by ")}`;
}

function codeOf(error: FormulaError): keyof typeof takeOffFindings {
  if (error.code === "missing") return "size-missing";
  return error.code === "chart" ? "not-in-chart" : "cannot-work-out";
}
