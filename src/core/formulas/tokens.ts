/**
 * A formula's text cut into tokens.
 *
 * Texts stand in double quotes, a quote inside is doubled (OpenFormula 5.4). A name starts with a
 * letter or `_` and goes on with letters, digits, `_` and points; any heading may stand in square
 * brackets. Quotes, dashes and spaces may be the typographic ones that word processors make.
 */
import { err, ok, type Result } from "../base/result";
import { plainCharacters } from "../base/plainCharacters";
import { startsAmount } from "./amount";
import { formulaFault, type FormulaFault } from "./findings";
import { formulaLimits } from "./limits";
import { readQuantity } from "./quantity";
import type { BinaryOperator } from "./tree";

type Kinds =
  | { readonly kind: "number"; readonly value: number; readonly isLength: boolean }
  | { readonly kind: "text"; readonly value: string }
  | { readonly kind: "name"; readonly written: string; readonly isBracketed: boolean }
  | { readonly kind: "operator"; readonly operator: BinaryOperator | "%" }
  | { readonly kind: "open" | "close" | "separator" | "end" };

export type Token = Kinds & { readonly position: number; readonly end: number };

/** Every operator as it may be typed, two characters before one. */
const operators: readonly (readonly [string, BinaryOperator | "%"])[] = [
  ["<=", "<="],
  [">=", ">="],
  ["<>", "<>"],
  ["=", "="],
  ["<", "<"],
  [">", ">"],
  ["&", "&"],
  ["+", "+"],
  ["-", "-"],
  ["*", "*"],
  ["/", "/"],
  ["^", "^"],
  ["%", "%"],
  ["≤", "<="],
  ["≥", ">="],
  ["≠", "<>"],
  ["×", "*"],
  ["÷", "/"],
];

const punctuation: Readonly<Record<string, "open" | "close" | "separator">> = {
  "(": "open",
  ")": "close",
  ",": "separator",
  ";": "separator",
};

const name = /[\p{L}_][\p{L}\p{N}\p{M}_.]*/uy;
const blanks = / */y;

/** The tokens up to one of kind `end`. A leading `=` is passed over. */
export function tokensOf(text: string): Result<readonly Token[], FormulaFault> {
  const plain = plainCharacters(text);
  const tokens: Token[] = [];
  let position = pastBlanks(plain, 0);
  if (plain[position] === "=") position++;
  for (;;) {
    position = pastBlanks(plain, position);
    if (position >= plain.length) break;
    const token = tokenAt(text, plain, position, tokens.at(-1));
    if (!token.ok) return token;
    if (tokens.length >= formulaLimits.parts * 2) {
      return err(
        formulaFault("formula-too-many-parts", position, "", { most: formulaLimits.parts }),
      );
    }
    tokens.push(token.value);
    position = token.value.end;
  }
  return ok([...tokens, { kind: "end", position, end: position }]);
}

function pastBlanks(plain: string, position: number): number {
  blanks.lastIndex = position;
  blanks.test(plain);
  return blanks.lastIndex;
}

function tokenAt(
  text: string,
  plain: string,
  position: number,
  before: Token | undefined,
): Result<Token, FormulaFault> {
  const character = plain.charAt(position);
  if (character === '"') return textAt(text, plain, position);
  if (character === "[") return headingAt(text, position);
  const kind = Object.hasOwn(punctuation, character) ? punctuation[character] : undefined;
  if (kind !== undefined) return ok({ kind, position, end: position + 1 });
  for (const [written, operator] of operators) {
    if (plain.startsWith(written, position)) {
      return ok({ kind: "operator", operator, position, end: position + written.length });
    }
  }
  if (startsAmount(plain, position)) {
    const quantity = readQuantity(
      plain,
      position,
      before?.kind === "operator" ? before.operator : "",
    );
    if (quantity.ok) return ok({ kind: "number", position, ...quantity.value });
    // As typed, not as made plain.
    const { error } = quantity;
    const piece = text.slice(error.position, error.position + error.piece.length);
    return err({ ...error, piece });
  }
  name.lastIndex = position;
  const written = name.exec(plain)?.[0];
  if (written !== undefined) {
    const end = position + written.length;
    return ok({
      kind: "name",
      written: text.slice(position, end),
      isBracketed: false,
      position,
      end,
    });
  }
  const piece = String.fromCodePoint(text.codePointAt(position) ?? 0);
  const hint = hints[character] ?? "";
  return err(formulaFault("formula-character", position, piece, { hint }));
}

const hints: Readonly<Record<string, string>> = {
  "!": "; not equal is <>, and other sheets cannot be read",
  "'": "; a foot mark must follow a number, and texts stand in double quotes",
  "{": "; lists cannot be used",
  ":": "; ranges cannot be used",
  $: "; a formula reads names, not cells",
  "#": "; a heading with # stands in square brackets",
  "]": ", or add a [ before the heading",
};

/** A text that a straight quote opened may hold curly ones; one that a curly quote opened ends at any. */
function textAt(text: string, plain: string, position: number): Result<Token, FormulaFault> {
  const searched = text[position] === '"' ? text : plain;
  let value = "";
  let from = position + 1;
  for (;;) {
    const quote = searched.indexOf('"', from);
    if (quote < 0) {
      const piece = text.slice(position, position + 20);
      return err(formulaFault("formula-text-open", position, piece));
    }
    value += text.slice(from, quote);
    from = quote + 2;
    if (searched[quote + 1] !== '"') {
      return ok({ kind: "text", value, position, end: quote + 1 });
    }
    value += '"';
  }
}

function headingAt(text: string, position: number): Result<Token, FormulaFault> {
  const close = text.indexOf("]", position);
  if (close < 0) {
    const piece = text.slice(position, position + 20);
    return err(formulaFault("formula-bracket-name-open", position, piece));
  }
  const written = text.slice(position + 1, close).trim();
  return ok({ kind: "name", written, isBracketed: true, position, end: close + 1 });
}
