/** One part of the kit book over a column of openings. */
import { makeFinding } from "../base/finding";
import { inches, isPieces, type Inches } from "../base/units";
import { isFormulaError, type FormulaValue, type Value } from "../formulas/value";
import type { BookFormula, CompiledPart } from "../kitbook/kitBook";
import { describeSource } from "./describe";
import { aboutFormula, type Report, type ReportError } from "./faults";
import { isTrue } from "./truth";
import { valuesOf, type Take } from "./take";
import { takeOffFindings } from "./takeOffFindings";

/** What is counted: an item, and the size it comes in. One object for all openings that need it. */
export type Piece = { readonly item: string; readonly size: readonly Inches[] };

/**
 * One part for every opening. `each` is for one opening: a number where all need the same, else by
 * row, zero where the part is not needed or cannot be counted. `piece` is one for all, or by row.
 */
export type PartColumn = {
  readonly part: CompiledPart;
  readonly each: number | readonly number[];
  readonly piece: Piece | readonly (Piece | undefined)[];
};

const noSize: readonly Inches[] = [];

/** The formulas of a piece's size: its own, or the length it is cut to. */
export const sizeFormulasOf = (part: CompiledPart): readonly BookFormula[] =>
  part.size.length > 0 || part.cutLength === null ? part.size : [part.cutLength];

/** Works a part out for every opening. What cannot be counted is reported and counts as nothing. */
export function partColumn(
  take: Take,
  part: CompiledPart,
  report: Report,
  reportError: ReportError,
): PartColumn {
  const count = take.openings.length;
  const itemFormula = part.item.kind === "formula" ? part.item.formula : null;
  const sizeFormulas = sizeFormulasOf(part);
  const sameForAll: Piece | null =
    part.item.kind === "code" && sizeFormulas.length === 0
      ? { item: part.item.code, size: noSize }
      : null;
  const known = new Map<string | number, Piece>();
  const refuse = (
    row: number,
    code: keyof typeof takeOffFindings,
    formula: BookFormula,
    found: Value,
  ) =>
    report(
      row,
      makeFinding(takeOffFindings, code, {
        ...aboutFormula(take, formula)(row),
        found: String(found ?? ""),
        values: { formula: formula.text, row: describeSource(part.source) },
      }),
    );

  /** The value for a row that passes `isRight`; `null`, once reported, where it does not. */
  const checked = <Right extends Value>(
    row: number,
    formula: BookFormula,
    value: FormulaValue,
    isRight: (value: Value) => value is Right,
    code: keyof typeof takeOffFindings,
  ): Right | null => {
    if (isFormulaError(value)) reportError(row, formula, value);
    else if (isRight(value)) return value;
    else refuse(row, code, formula, value);
    return null;
  };
  const valueAt = (formula: BookFormula, row: number): FormulaValue =>
    valuesOf(take, formula)[row] ?? null;

  /** The item and size for an opening; `null`, once reported, where one of them cannot be had. */
  const pieceAt = (row: number): Piece | null => {
    let item = part.item.kind === "code" ? part.item.code : "";
    if (itemFormula !== null) {
      const code = checked(row, itemFormula, valueAt(itemFormula, row), isCode, "item-not-named");
      if (code === null) return null;
      item = String(code).trim();
    }
    const size: Inches[] = [];
    for (const formula of sizeFormulas) {
      const length = checked(row, formula, valueAt(formula, row), isLength, "size-not-a-length");
      if (length !== null) size.push(toSize(length));
    }
    if (size.length < sizeFormulas.length) return null;
    const [only] = size;
    // Building a key's text for each opening would cost more than all the rest of the row.
    const isOneLength = itemFormula === null && size.length === 1 && only !== undefined;
    const key = isOneLength ? only : size.length === 0 ? item : pieceKey(item, size);
    const piece = known.get(key) ?? { item, size };
    known.set(key, piece);
    return piece;
  };

  const constant = part.quantity.compiled.constant;
  const isConstant = typeof constant === "number" && isPieces(constant);
  if (isConstant && part.when === null && sameForAll !== null) {
    return { part, each: constant, piece: sameForAll };
  }
  const needed = part.when === null ? null : valuesOf(take, part.when);
  const quantities = isConstant ? null : valuesOf(take, part.quantity);
  const each = new Array<number>(count).fill(0);
  const found = sameForAll === null ? new Array<Piece | undefined>(count).fill(undefined) : null;
  for (let row = 0; row < count; row += 1) {
    if (part.when !== null && needed !== null) {
      const answer = needed[row] ?? null;
      if (isFormulaError(answer)) {
        reportError(row, part.when, answer);
        continue;
      }
      if (!isTrue(answer)) continue;
    }
    const quantity =
      quantities === null
        ? constant
        : checked(row, part.quantity, quantities[row] ?? null, isWhole, "quantity-not-whole");
    if (typeof quantity !== "number" || quantity === 0) continue;
    if (found !== null) {
      const piece = pieceAt(row);
      if (piece === null) continue;
      found[row] = piece;
    }
    each[row] = quantity;
  }
  return { part, each, piece: sameForAll ?? found ?? [] };
}

const isWhole = (value: Value): value is number => typeof value === "number" && isPieces(value);
const isLength = (value: Value): value is number => typeof value === "number" && value > 0;
const isCode = (value: Value): value is string | number =>
  typeof value === "number" || (typeof value === "string" && value.trim() !== "");

/** Twelve digits, so that two ways to the same size make one piece and not two. */
const toSize = (length: number): Inches =>
  inches(Number.isInteger(length * 64) ? length : Number(length.toPrecision(12)));

/** What makes two pieces the same: the item without case, and the size. */
export const pieceKey = (item: string, size: readonly Inches[]): string =>
  size.length === 0 ? item.toLowerCase() : `${item.toLowerCase()} (${size.join(" x ")})`;
