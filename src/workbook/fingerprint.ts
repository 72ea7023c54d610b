/**
 * Tells whether a person typed into a sheet of ours: the fingerprint of what we wrote is kept with
 * the sheet's mark, and compared with the fingerprint of what stands there before it is replaced.
 *
 * It must come out alike in every host, since a workbook saved by one is opened in another. So it
 * looks only at what was typed (not at results, formats or widths), and forgives what hosts do to a
 * formula by themselves: spaces, letter case, prefixes of new functions, references to other sheets,
 * which move when a row is inserted there or the sheet is renamed or deleted, and references to
 * tables, which are written `Lines[[#This Row],[Item]]` or `[@Item]` and follow a table's new name.
 *
 * A sheet with cells to type into has two fingerprints with a point between them: of all cells, and
 * of those that nobody is asked to type into. Typing is no reason to keep the old sheet where the new
 * one carries on what was typed.
 */
import type { CellValue } from "../core/base/cell";
import { shownValue, type CarriedCell, type Drawing, type SheetMark } from "./drawing";
import { sameMark } from "./sheetStamp";
import type { SheetSnapshot } from "./snapshot";

/** What was typed into one cell: a formula if there is one, else the value. */
export type TypedCell = {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  readonly formula?: string;
};

/** Looked up once: it is called for every character of a workbook. */
const { imul } = Math;

/** The fingerprint of a sheet's cells, in row order. Blank cells may be left out or be there. */
export function fingerprint(cells: Iterable<TypedCell>): string {
  // Two FNV-1a hashes of 32 bits over the same text, from different starts.
  let first = 0x811c9dc5;
  let second = 0x9e3779b1;
  for (const cell of cells) {
    const typed = typedText(cell);
    if (typed === "") continue;
    const text = `${cell.row},${cell.column}${typed}\n`;
    for (let index = 0; index < text.length; index++) {
      const code = text.charCodeAt(index);
      first = imul(first ^ code, 0x01000193);
      second = imul(second ^ code, 0x01000193) ^ (second >>> 15);
    }
  }
  return [first, second].map((hash) => (hash >>> 0).toString(16).padStart(8, "0")).join("");
}

/** The fingerprint that is kept of cells as they are written. */
export function writtenFingerprint(
  cells: Iterable<TypedCell & { readonly input?: boolean }>,
): string {
  const all = [...cells];
  const others = all.filter(({ input }) => input !== true);
  const parts = others.length === all.length ? [all] : [all, others];
  return parts.map(fingerprint).join(".");
}

/** The part of what `writtenFingerprint` gives that is the fingerprint of all cells. */
export const wholeFingerprint = (written: string): string => written.split(".")[0] ?? "";

/**
 * Whether cells are as they were written, but for those that are carried on. A carried cell counts
 * by what it shows, be it a formula's result; each must still show what it did when it was read.
 */
export function isAsWritten(
  written: string,
  cells: Iterable<TypedCell>,
  carried: readonly CarriedCell[] = [],
): boolean {
  const all = [...cells];
  const read = carried.map((cell): [string, string] => [placeKey(cell), typedText(cell)]);
  const waiting = new Map(read.filter(([, text]) => text !== ""));
  const others = all.filter(({ row, column, value }) => {
    const place = placeKey({ row, column });
    return waiting.get(place) !== typedText({ value }) || !waiting.delete(place);
  });
  // What was cleared since it was read would come back with the new sheet.
  if (waiting.size > 0) return false;
  const [, withoutInput] = written.split(".");
  return fingerprint(all) === wholeFingerprint(written) || fingerprint(others) === withoutInput;
}

/** What one of the drawings carries on from the sheet with this mark. */
export const carriedFrom = (
  mark: SheetMark | null,
  drawings: readonly Drawing[],
): readonly CarriedCell[] =>
  drawings.find((drawing) => mark !== null && drawing.mark !== null && sameMark(drawing.mark, mark))
    ?.carried ?? [];

/** The fingerprint that a drawing has once it is written. */
export const drawingFingerprint = (drawing: Drawing): string =>
  writtenFingerprint(typedCells(drawing));

/** Whether a person typed into a sheet of ours since it was written what is not carried on. */
export const isTouched = (
  { written, rows }: Pick<SheetSnapshot, "written" | "rows">,
  carried: readonly CarriedCell[] = [],
): boolean => written !== null && !isAsWritten(written, snapshotCells(rows), carried);

const placeKey = ({ row, column }: Pick<TypedCell, "row" | "column">): string => `${row},${column}`;

function* snapshotCells(rows: SheetSnapshot["rows"]): Generator<TypedCell> {
  for (const [row, cells] of rows.entries()) {
    for (const [column, cell] of cells.entries()) {
      if (cell !== null) yield { row, column, ...cell };
    }
  }
}

function* typedCells(drawing: Drawing): Generator<TypedCell & { readonly input: boolean }> {
  for (const [row, { cells }] of drawing.rows.entries()) {
    for (const [column, cell] of cells.entries()) {
      if (cell === null) continue;
      const shown = { row, column, value: shownValue(cell), input: cell.input === true };
      yield cell.kind === "formula" ? { ...shown, formula: cell.formula } : shown;
    }
  }
}

/** A date counts as its number, since hosts differ in what they take for a date. */
function typedText({ value, formula }: Pick<TypedCell, "value" | "formula">): string {
  if (formula !== undefined) return typedFormula(plainFormula(formula));
  if (value === null || value === "") return "";
  if (typeof value === "string") return `t${value}`;
  if (typeof value === "boolean") return value ? "btrue" : "bfalse";
  if (typeof value === "number") return `n${plainNumber(value)}`;
  return value.kind === "date" ? `n${plainNumber(value.serial)}` : `e${value.error}`;
}

/** Some programs save a yes or no as the function that gives it. */
function typedFormula(formula: string): string {
  if (formula === "=TRUE()") return "btrue";
  return formula === "=FALSE()" ? "bfalse" : `f${formula}`;
}

/** Twelve digits: files and hosts differ in the last ones of a double. */
const plainNumber = (value: number): string => String(Number(value.toPrecision(12)));

const otherSheet =
  /(?:'(?:[^']|'')*'|#?[\p{L}\p{N}_.]+)!(?:#REF!|\$?[A-Z]{0,3}\$?\d*(?::\$?[A-Z]{0,3}\$?\d*)?)/gu;

const structured = /(?:[\p{L}_\\][\p{L}\p{N}_.\\]*)?\[(?:[^[\]']|'.|\[(?:[^[\]']|'.)*\])*\]/gu;

/** Text between double quotes is left as it is; all else loses what hosts change by themselves. */
const plainFormula = (formula: string): string =>
  formula
    .split(/("(?:[^"]|"")*")/)
    .map((part) =>
      part.startsWith('"')
        ? part
        : part
            .toUpperCase()
            .replace(/_XLFN\.|_XLWS\.|_XLPM\.|@/g, "")
            .replace(/_XLDUDF_([A-Z0-9]+)_/g, "$1.")
            .replace(otherSheet, "!")
            .replace(structured, "[]")
            .replace(/\s+/g, ""),
    )
    .join("");
