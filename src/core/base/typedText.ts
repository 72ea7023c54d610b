/** Texts that someone typed: how long one may be, and words about it for messages. */

/** No number with its unit or currency is longer; readers refuse more before they look at it. */
export const longestText = 100;

/** The text without the spaces around it, cut to `most` characters with `…` as the last. */
export function shortText(text: string, most = 40): string {
  const trimmed = text.trim();
  // A cut must not leave half of a character that takes two units.
  return trimmed.length <= most
    ? trimmed
    : `${trimmed.slice(0, most - 1).replace(/[\uD800-\uDBFF]$/, "")}…`;
}

/** The place where a text stops making sense: `“x 7'-0"” (character 7)`, counted from one, or `its end`. */
export function placeInText(text: string, position: number): string {
  const rest = shortText(text.slice(position), 12);
  return rest === "" ? "its end" : `“${rest}” (character ${position + 1})`;
}
