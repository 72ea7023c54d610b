/** A cell that holds a weight, a load or the like to the core's own unit of it. */
import type { CellValue } from "../base/cell";
import { plainCharacters } from "../base/plainCharacters";
import { err, ok, type Result } from "../base/result";
import { typedNumber } from "../base/typedNumber";
import { unitsOf, type MeasureKind, type MeasureUnit } from "./measures";

export type ReadMeasure = {
  /** In the core's own unit. */
  readonly amount: number;
  /** The number as typed. */
  readonly typed: number;
  /** What it was read in. */
  readonly unit: MeasureUnit;
  /** Whether the unit was typed with the number. */
  readonly hasUnit: boolean;
  /** Its comma parts thousands here and could as well part decimals, such as `1,250 kg`. */
  readonly hasUnsureComma: boolean;
};

/** No number from zero up; or a number, and a unit of it that is not known for its kind. */
export type MeasureFault =
  { readonly code: "not-a-number" } | { readonly code: "unit-not-known"; readonly unit: string };

/**
 * Reads a number in `bare`, or text with a unit of its own: `1.2 kg`, `30 N·m`, `2.5 kg per metre`.
 * A number of pieces behind it (`kg each`) says nothing more.
 */
export function readMeasure(
  value: CellValue,
  kind: MeasureKind,
  bare: MeasureUnit,
): Result<ReadMeasure, MeasureFault> {
  if (typeof value === "number") return measured(value, bare, false, false);
  if (typeof value !== "string") return err({ code: "not-a-number" });
  const plain = plainCharacters(value).trim();
  const [, digits = "", words = ""] = /^([+-]?[\d.,][\d., ]*)([a-z#'"].*)?$/is.exec(plain) ?? [];
  const typed = digits.trim();
  const unit = words === "" ? bare : readUnit(words, kind);
  const hasUnsureComma = /^[+-]?[1-9]\d{0,2},\d{3}$/.test(typed);
  if (unit !== null) return measured(typedNumber(typed), unit, words !== "", hasUnsureComma);
  return err(
    Number.isFinite(typedNumber(typed))
      ? { code: "unit-not-known", unit: words.trim() }
      : { code: "not-a-number" },
  );
}

function measured(
  typed: number,
  unit: MeasureUnit,
  hasUnit: boolean,
  hasUnsureComma: boolean,
): Result<ReadMeasure, MeasureFault> {
  if (!(Number.isFinite(typed) && typed >= 0)) return err({ code: "not-a-number" });
  return ok({ amount: inOwnUnit(typed, unit), typed, unit, hasUnit, hasUnsureComma });
}

/** So many of a unit in the core's own. */
export const inOwnUnit = (amount: number, { inOne }: MeasureUnit): number =>
  inOne === 1 ? amount : amount / inOne;

/** The unit of that kind by any of its names, in any case; `null` for what is none of them. */
export function readUnit(words: string, kind: MeasureKind): MeasureUnit | null {
  const plain = plainWords(words);
  return unitsOf[kind].find((unit) => unit.words.includes(plain)) ?? null;
}

const pieceWords = /\/?(each|ea|pc|pcs|piece|pieces|unit)$/;

/** In small letters, `/` for `per`, without spaces, points, dashes and marks of multiplying. */
const plainWords = (words: string): string =>
  plainCharacters(words.normalize("NFKC"))
    .toLowerCase()
    .replace(/\bper\b/g, "/")
    .replace(/[\s.\-*·⋅∙•×^()[\]]/g, "")
    .replace(pieceWords, "");
