/**
 * Which way an opening works, as the crew sees it: a right hand slides open to the right, or has
 * its hinges on the right; in a pair the right leaf is the active one. Common practice, no source:
 * trades and countries differ, so the picture says what it took the word for.
 */
import { isFormulaError, type FormulaValue } from "../formulas/value";
import type { Hand } from "./elevation";

const words: ReadonlyMap<string, Hand> = new Map([
  ["r", "right"],
  ["rh", "right"],
  ["right", "right"],
  ["right hand", "right"],
  ["right handed", "right"],
  ["l", "left"],
  ["lh", "left"],
  ["left", "left"],
  ["left hand", "left"],
  ["left handed", "left"],
]);

/** The hand that a schedule's cell names, in any case; `null` where it names none, or both. */
export function readHand(value: FormulaValue): Hand | null {
  if (isFormulaError(value) || typeof value !== "string") return null;
  const word = value
    .toLowerCase()
    .replace(/\./g, "")
    .replace(/-/g, " ")
    .trim()
    .replace(/\s+/g, " ");
  return words.get(word) ?? null;
}
