/** Reading one cell of a kit-book row: each reader reports what is wrong and answers `null` then. */
import { cellText, isBlank, type CellPlace, type TypedCell } from "../base/cell";
import { makeFinding, type Finding, type FindingDetails } from "../base/finding";
import { faultFinding } from "../formulas/findings";
import type { Formula } from "../formulas/formula";
import { readFormula } from "../formulas/read";
import { kitBookFindings, type KitBookFindingCode } from "./findings";

/** A formula that has been read but not compiled: what its names mean depends on the opening type. */
export type ReadFormula = {
  /** As typed, without spaces at the ends. */
  readonly text: string;
  readonly place: CellPlace | null;
  readonly formula: Formula;
};

/** Where readers put their findings. */
export type Report = (finding: Finding) => void;

export const bookFinding = (code: KitBookFindingCode, details: FindingDetails): Finding =>
  makeFinding(kitBookFindings, code, details);

/** The cell's text without spaces at the ends; reports an error or a date, which nobody meant. */
export function readText(cell: TypedCell, report: Report): string | null {
  const { value, place } = cell;
  if (typeof value === "object" && value !== null) {
    const code = value.kind === "error" ? "book-cell-error" : "book-cell-date";
    report(bookFinding(code, { place, found: cellText(value) }));
    return null;
  }
  return cellText(value).trim();
}

/** As `readText`, and reports a blank cell; `column` is what the missing thing is called. */
export function readFilledText(cell: TypedCell, column: string, report: Report): string | null {
  const text = readText(cell, report);
  if (text !== "") return text;
  report(bookFinding("book-cell-empty", { place: cell.place, values: { column } }));
  return null;
}

/** The formula `text`, which stands in the cell `place`. */
export function readFormulaText(
  text: string,
  place: CellPlace | null,
  report: Report,
): ReadFormula | null {
  const read = readFormula(text);
  if (read.ok) return { text, place, formula: read.value };
  report(faultFinding(read.error, text, place));
  return null;
}

/** The cell's formula; reports a blank cell. */
export function readFilledFormula(
  cell: TypedCell,
  column: string,
  report: Report,
): ReadFormula | null {
  const text = readFilledText(cell, column, report);
  return text === null ? null : readFormulaText(text, cell.place, report);
}

/** The cell's formula, or `null` for a blank cell, which is not reported. */
export const readFormulaIfAny = (cell: TypedCell, report: Report): ReadFormula | null =>
  isBlank(cell.value) ? null : readFilledFormula(cell, "", report);
