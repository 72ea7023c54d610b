/** Messages of limits: words with `{name}` where a value is shown. */
import { normalName } from "../formulas/names";

/** A piece of a message as read; `name` is as `normalName` spells it. */
export type ReadMessagePiece =
  | { readonly kind: "words"; readonly words: string }
  | { readonly kind: "name"; readonly name: string; readonly written: string };

/** The pieces in their order. Braces that hold no name are words. */
export function readMessage(text: string): readonly ReadMessagePiece[] {
  return text
    .split(/(\{[^{}]*\})/)
    .filter((piece) => piece !== "")
    .map((piece) => {
      const written = piece.startsWith("{") && piece.endsWith("}") ? piece.slice(1, -1) : "";
      const name = normalName(written);
      return name === "" ? { kind: "words", words: piece } : { kind: "name", name, written };
    });
}
