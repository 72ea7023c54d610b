/** What a person types to correct a quantity: so many more, so many fewer, or another number instead. */
import { plainCharacters } from "../base/plainCharacters";
import { err, ok, type Result } from "../base/result";
import { longestText } from "../base/typedText";
import { isPieces, pieces, type Pieces } from "../base/units";

export type Change = { readonly kind: "plus" | "minus" | "instead"; readonly pieces: Pieces };

/** `not-whole`: a number that is no count of pieces, such as `+1.5`. */
export type ChangeFault = "unreadable" | "not-whole";

const kinds = { "+": "plus", "-": "minus", "=": "instead" } as const;
const signs = { plus: "+", minus: "-", instead: "=" } as const;

/** A number with a sign, or none; thousands may be parted by commas. */
const shape = /^([+\-=]?) ?(\d{1,9}|\d{1,3}(?:,\d{3}){1,2})(?:\.0*)?$/;

/**
 * Reads `+3`, `-2`, and `=14` or `14` for fourteen instead of the count. Dashes, signs and digits of
 * every kind are read.
 */
export function readChange(typed: string): Result<Change, ChangeFault> {
  if (typed.length > longestText) return err("unreadable");
  const text = plainCharacters(typed).replaceAll("\uFF0B", "+").replaceAll("\uFF1D", "=").trim();
  const [, sign = "", digits = ""] = shape.exec(text) ?? [];
  if (digits === "") {
    return err(/^[+\-=]? ?\d*[.,]\d+$/.test(text) ? "not-whole" : "unreadable");
  }
  const kind = sign === "+" || sign === "-" || sign === "=" ? kinds[sign] : "instead";
  return ok({ kind, pieces: pieces(Number(digits.replaceAll(",", ""))) });
}

/** The one way in which we write a change: `+3`, `-2`, `=14`. */
export const writeChange = ({ kind, pieces: count }: Change): string => `${signs[kind]}${count}`;

/** The quantity with the change; `null` where it would be below zero. */
export function changed(counted: Pieces, { kind, pieces: count }: Change): Pieces | null {
  if (kind === "instead") return count;
  const quantity = kind === "plus" ? counted + count : counted - count;
  return isPieces(quantity) ? quantity : null;
}
