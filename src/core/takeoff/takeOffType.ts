/**
 * All openings of one type through their part of the kit book: row by row of the book over columns
 * of openings, so that each formula is fetched once and runs over all of them.
 */
import type { Finding } from "../base/finding";
import { isPieces } from "../base/units";
import {
  blankColumn,
  formulaError,
  isFormulaError,
  type FormulaColumns,
  type FormulaValue,
} from "../formulas/value";
import type { CompiledSize, KitBook, OpeningType } from "../kitbook/kitBook";
import { formulasOf, slotsSaidBy } from "../kitbook/typeFormulas";
import type { Opening } from "../openings/opening";
import { fieldsText, messageText, type ShowLength } from "./describe";
import { aboutFormula, errorReporter, type Report, type ReportError } from "./faults";
import { partColumn, type PartColumn } from "./partColumn";
import { fieldsBehind, valuesOf, type Take } from "./take";
import { isTrue } from "./truth";

export type TypeTakeOff = {
  readonly take: Take;
  /** One column per part, in the book's order; those of stopped rows are not to be counted. */
  readonly columns: readonly PartColumn[];
  readonly findings: readonly Finding[];
  /** Rows of the take that gave no count, since a finding of theirs is a stop. */
  readonly stopped: ReadonlySet<number>;
};

/**
 * Takes off `openings`, which are all of `type`. An opening with a stop gives no count at all: half
 * a door's hardware in a total would hide that the rest is missing.
 */
export function takeOffType(
  book: KitBook,
  type: OpeningType,
  openings: readonly Opening[],
  show: ShowLength,
): TypeTakeOff {
  const take = workOutSizes(book, type, openings);
  const findings: Finding[] = [];
  const stopped = new Set<number>();
  const report: Report = (row, finding) => {
    if (finding.level === "stop") stopped.add(row);
    findings.push(finding);
  };
  const reportError = errorReporter(take, show, report);
  checkLimits(take, show, report, reportError);
  const columns = type.parts.map((part) => partColumn(take, part, report, reportError));
  return { take, columns, findings, stopped };
}

/** Fills the slots: fields from the openings, then each size in the order in which they need each other. */
export function workOutSizes(book: KitBook, type: OpeningType, openings: readonly Opening[]): Take {
  const read = slotsReadBy(type);
  const columns = book.fields.map((field, slot) => {
    if (!read.has(slot)) return [];
    const column = blankColumn(openings.length);
    // A blank length must never count as zero inches.
    const blank =
      field.kind === "length" ? formulaError("missing", `${field.label} is blank`) : null;
    for (const [row, opening] of openings.entries())
      column[row] = opening.fields[field.name] ?? blank;
    return column;
  });
  for (const size of type.sizes) columns[size.slot] = sizeColumn(size, columns, openings.length);
  return { type, openings, columns, evaluated: new Map() };
}

/** The slots that any formula or message of a type reads; a column that nobody reads is left empty. */
const slotsReadBy = (type: OpeningType): ReadonlySet<number> =>
  new Set([...formulasOf(type).flatMap(({ compiled }) => compiled.slots), ...slotsSaidBy(type)]);

function sizeColumn(size: CompiledSize, columns: FormulaColumns, count: number): FormulaValue[] {
  const { compiled } = size.formula;
  const column = blankColumn(count);
  for (let row = 0; row < count; row += 1)
    column[row] = asUnit(size, compiled.evaluate(columns, row));
  return column;
}

/** A size that is not of its unit is an error wherever it is used, so that no wrong number goes on. */
export function asUnit(size: CompiledSize, value: FormulaValue): FormulaValue {
  if (isFormulaError(value)) return value;
  const isRight =
    size.unit === "text" ||
    size.unit === "yes/no" ||
    (typeof value === "number" && (size.unit !== "count" || isPieces(value)));
  if (isRight) return value;
  const wanted = size.unit === "count" ? "whole number from zero up" : size.unit;
  const found = value === null || value === "" ? "nothing" : String(value);
  return formulaError("value", `${size.name} comes to ${found}, which is not a ${wanted}`);
}

function checkLimits(take: Take, show: ShowLength, report: Report, reportError: ReportError): void {
  for (const { when, level, message } of take.type.limits) {
    const about = aboutFormula(take, when);
    const fields = fieldsBehind(take, when);
    for (const [row, fires] of valuesOf(take, when).entries()) {
      if (isFormulaError(fires)) reportError(row, when, fires);
      else if (isTrue(fires)) {
        report(row, {
          code: "limit",
          level,
          found: fieldsText(take, fields, row, show),
          message: messageText(take, message, row, show),
          ...about(row),
        });
      }
    }
  }
}
