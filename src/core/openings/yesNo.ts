/** Reading yes and no in the ways that people type them. */
import type { CellValue } from "../base/cell";

const yesWords = new Set([
  "yes",
  "y",
  "true",
  "t",
  "1",
  "x",
  "✓",
  "✔",
  "☑",
  "on",
  "with",
  "req",
  "required",
  "reqd",
  "have",
  "present",
  "included",
  "incl",
  "oui",
  "si",
  "sí",
  "ja",
]);
const noWords = new Set([
  "no",
  "n",
  "false",
  "f",
  "0",
  "-",
  "–",
  "—",
  "none",
  "off",
  "without",
  "na",
  "n/a",
  "nil",
  "not",
  "not required",
  "absent",
  "excluded",
  "non",
  "nein",
  "☐",
]);

/**
 * `true` or `false`, `null` for a blank cell, `undefined` for anything that says neither.
 * Case, spaces at the ends and a final full stop do not matter; numbers other than 0 and 1 say neither.
 */
export function readYesNo(value: CellValue): boolean | null | undefined {
  if (value === null || typeof value === "boolean") return value;
  if (typeof value === "number") return value === 1 ? true : value === 0 ? false : undefined;
  if (typeof value === "object") return undefined;
  const word = value.trim().toLowerCase().replace(/\.$/, "");
  if (word === "") return null;
  if (yesWords.has(word)) return true;
  return noWords.has(word) ? false : undefined;
}
