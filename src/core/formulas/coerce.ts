/** How a value of one kind reads as another: OpenFormula 6.3 Implicit Conversion Operators. */
import { snapped } from "./rounding";
import type { FormulaNode } from "./tree";
import { formulaError, type FormulaError, type FormulaErrorCode, type FormulaValue } from "./value";

/** The part of a formula that an error is about. */
export type Site = { readonly formula: string; readonly node: FormulaNode };

/** An error about `site`; `says` is its sentence. */
export const errorAt = (site: Site, code: FormulaErrorCode, says: string): FormulaError =>
  formulaError(code, says, site.node.position, site.formula);

/** The formula's own text at `site`, shortened to fit into a sentence. */
export function pieceOf({ formula, node }: Site): string {
  const piece = formula.slice(node.position, node.end);
  return piece.length <= 60 ? piece : `${piece.slice(0, 57)}…`;
}

/**
 * A number as text: the 15 digits that a spreadsheet shows, without grouping; with an exponent only
 * from 1E+21 up and below a billionth.
 */
export function numberText(value: number): string {
  const text = String(snapped(value));
  const exponent = text.indexOf("e-");
  if (exponent < 0) return text.replace("e", "E");
  const places = Number(text.slice(exponent + 2));
  return places > 9 ? text.replace("e", "E") : value.toFixed(places + 14).replace(/0+$/, "");
}

/** A value as messages show it: text in quotes, a blank as `blank`. */
export function shown(value: FormulaValue): string {
  if (value === null) return "blank";
  if (typeof value === "string")
    return `"${value.length <= 60 ? value : `${value.slice(0, 57)}…`}"`;
  if (typeof value === "number") return numberText(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return value.message;
}

/** Decimal digits with a sign, a point, an exponent and a `%`, each if wanted; no length. */
const numericText = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?(?:\s*%)?$/i;

/** Blank is 0, TRUE is 1, FALSE 0; a text that is a decimal number is that number. */
export function asNumber(value: FormulaValue, site: Site): number | FormulaError {
  if (typeof value === "number") return value;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (value === null) return 0;
  if (typeof value === "object") return value;
  const text = value.trim();
  if (numericText.test(text)) {
    const isPercent = text.endsWith("%");
    const parsed = Number(isPercent ? text.slice(0, -1) : text);
    if (Number.isFinite(parsed)) return isPercent ? parsed / 100 : parsed;
  }
  return notA("number", value, site);
}

/** Blank is FALSE, a number is TRUE unless it is 0, the texts TRUE and FALSE are themselves. */
export function asTruth(value: FormulaValue, site: Site): boolean | FormulaError {
  if (typeof value === "boolean") return value;
  if (typeof value === "number") return value !== 0;
  if (value === null) return false;
  if (typeof value === "object") return value;
  const text = value.trim().toUpperCase();
  if (text === "TRUE") return true;
  return text === "FALSE" ? false : notA("condition (TRUE or FALSE)", value, site);
}

/** Blank is the empty text; a number shows its 15 digits; TRUE and FALSE are in capitals. */
export function asText(value: FormulaValue): string | FormulaError {
  if (typeof value === "string") return value;
  if (typeof value === "number") return numberText(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return value ?? "";
}

function notA(kind: string, value: string, site: Site): FormulaError {
  const what =
    site.node.kind === "text" ? `${shown(value)} is` : `${pieceOf(site)} is ${shown(value)},`;
  return errorAt(site, "value", `${what} not a ${kind}.`);
}
