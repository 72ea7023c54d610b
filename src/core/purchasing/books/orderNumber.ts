/** Order numbers of the firm's own pattern, such as `PO-{year}-{number:4}`. */
import { err, ok, type Result } from "../../base/result";

/** A checked pattern. */
export type OrderPattern = {
  readonly text: string;
  readonly parts: readonly PatternPart[];
};

type PatternPart =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "year" }
  | { readonly kind: "number"; readonly digits: number };

export type OrderPatternFault = {
  readonly code: "pattern-without-number" | "pattern-with-two-numbers" | "pattern-word-unknown";
  /** The part that is wrong, or the whole pattern. */
  readonly found: string;
  readonly message: string;
};

/** `PO-{year}-{number:4}`: common practice, no source. */
export const commonOrderPattern: OrderPattern = {
  text: "PO-{year}-{number:4}",
  parts: [
    { kind: "text", text: "PO-" },
    { kind: "year" },
    { kind: "text", text: "-" },
    { kind: "number", digits: 4 },
  ],
};

/**
 * Reads a pattern. `{year}` is the year of the order in four digits, `{number}` counts orders, and
 * `{number:4}` has at least four digits with zeros in front. Everything else stands as it is. A
 * pattern has one number; with the year in it, numbers start at one each year.
 */
export function readOrderPattern(text: string): Result<OrderPattern, OrderPatternFault> {
  const parts: PatternPart[] = [];
  for (const piece of text.split(/(\{[^{}]*\})/)) {
    const number = /^\{number(?::([1-9]))?\}$/.exec(piece);
    if (number !== null) parts.push({ kind: "number", digits: Number(number[1] ?? 1) });
    else if (piece === "{year}") parts.push({ kind: "year" });
    else if (/[{}]/.test(piece)) {
      const message = `“${piece}” is no part of an order number. Use {year}, {number} or {number:4}.`;
      return err({ code: "pattern-word-unknown", found: piece, message });
    } else if (piece !== "") parts.push({ kind: "text", text: piece });
  }
  const numbers = parts.filter((part) => part.kind === "number").length;
  if (numbers === 1) return ok({ text, parts });
  const few = numbers === 0;
  return err({
    code: few ? "pattern-without-number" : "pattern-with-two-numbers",
    found: text,
    message: few
      ? "An order number needs {number} in its pattern, so that no two are the same."
      : "An order number has one {number}.",
  });
}

/**
 * The number after the highest of `used` that fits the pattern and the year; numbers of other
 * patterns and years are passed over, and gaps are not filled.
 */
export function nextOrderNumber(
  pattern: OrderPattern,
  year: number,
  used: readonly string[],
): string {
  const source = pattern.parts.map((part) => {
    if (part.kind === "year") return yearText(year);
    return part.kind === "number"
      ? "(\\d{1,15})"
      : part.text.replace(/[\\^$.*+?()[\]{}|/-]/g, "\\$&");
  });
  const known = new RegExp(`^${source.join("")}$`);
  const highest = used.reduce((most, text) => {
    const found = known.exec(text.trim());
    return found === null ? most : Math.max(most, Number(found[1]));
  }, 0);
  return pattern.parts
    .map((part) => {
      if (part.kind === "year") return yearText(year);
      return part.kind === "number" ? String(highest + 1).padStart(part.digits, "0") : part.text;
    })
    .join("");
}

const yearText = (year: number): string => String(year).padStart(4, "0");
