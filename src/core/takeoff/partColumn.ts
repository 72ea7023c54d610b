/** One part of the kit book over a column of openings. */
import { makeFinding } from "../base/finding";
import { inches, isPieces, type Inches } from "../base/units";
import { isFormulaError, type Value } from "../formulas/value";
import type { BookFormula, CompiledPart } from "../kitbook/kitBook";
import { describeSource } from "./describe";
import { about, type Report, type ReportError } from "./faults";
import { isTrue } from "./truth";
import type { Take } from "./take";
import { takeOffFindings } from "./takeOffFindings";

export type PartColumn = {
  readonly part: CompiledPart;
  /** For one opening, by row; zero where the part is not needed or cannot be counted. */
  readonly quantities: readonly number[];
  /** By row; `null` where the item is the same code for all. */
  readonly items: readonly string[] | null;
  /** By row; `null` where pieces carry no size. */
  readonly sizes: readonly (readonly Inches[])[] | null;
};

/** A piece without a size. */
export const noSize: readonly Inches[] = [];

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
  const { columns } = take;
  const count = take.openings.length;
  const quantities = new Array<number>(count).fill(0);
  const itemFormula = part.item.kind === "formula" ? part.item.formula : null;
  const items = itemFormula === null ? null : new Array<string>(count).fill("");
  const sizeFormulas = sizeFormulasOf(part);
  const sizes = sizeFormulas.length === 0 ? null : new Array<readonly Inches[]>(count).fill(noSize);
  const refuse = (
    row: number,
    code: keyof typeof takeOffFindings,
    formula: BookFormula,
    found: Value,
  ) =>
    report(
      row,
      makeFinding(takeOffFindings, code, {
        ...about(take, formula, row),
        found: String(found ?? ""),
        values: { formula: formula.text, row: describeSource(part.source) },
      }),
    );

  /** The value of a formula that passes `isRight`; `null`, once reported, where it does not. */
  const valueOf = <Right extends Value>(
    row: number,
    formula: BookFormula,
    isRight: (value: Value) => value is Right,
    code: keyof typeof takeOffFindings,
  ): Right | null => {
    const value = formula.compiled.evaluate(columns, row);
    if (isFormulaError(value)) reportError(row, formula, value);
    else if (isRight(value)) return value;
    else refuse(row, code, formula, value);
    return null;
  };

  for (let row = 0; row < count; row += 1) {
    if (part.when !== null) {
      const needed = part.when.compiled.evaluate(columns, row);
      if (isFormulaError(needed)) {
        reportError(row, part.when, needed);
        continue;
      }
      if (!isTrue(needed)) continue;
    }
    const quantity = valueOf(row, part.quantity, isWhole, "quantity-not-whole");
    if (quantity === null || quantity === 0) continue;
    if (items !== null && itemFormula !== null) {
      const code = valueOf(row, itemFormula, isCode, "item-not-named");
      if (code === null) continue;
      items[row] = String(code).trim();
    }
    if (sizes !== null) {
      const size: Inches[] = [];
      for (const formula of sizeFormulas) {
        const length = valueOf(row, formula, isLength, "size-not-a-length");
        if (length !== null) size.push(toSize(length));
      }
      if (size.length < sizeFormulas.length) continue;
      sizes[row] = size;
    }
    quantities[row] = quantity;
  }
  return { part, quantities, items, sizes };
}

const isWhole = (value: Value): value is number => typeof value === "number" && isPieces(value);
const isLength = (value: Value): value is number => typeof value === "number" && value > 0;
const isCode = (value: Value): value is string | number =>
  typeof value === "number" || (typeof value === "string" && value.trim() !== "");

/** Twelve digits, so that two ways to the same size make one line and not two. */
const toSize = (length: number): Inches => inches(Number(length.toPrecision(12)));
