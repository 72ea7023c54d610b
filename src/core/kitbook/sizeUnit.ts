/** What a size's value must be. */
import { snapped } from "../formulas/rounding";
import type { Value } from "../formulas/value";
import type { FieldKind } from "./fields";

/** `length` is inches; `count` is a whole number from zero up. */
export const sizeUnits = ["length", "count", "number", "text", "yes/no"] as const;
export type SizeUnit = (typeof sizeUnits)[number];

/** Whether `value` can be a size of that unit; a blank can be a text or a no, but never a number. */
export function fitsUnit(unit: SizeUnit, value: Value): boolean {
  switch (unit) {
    case "length":
    case "number":
      return typeof value === "number";
    case "count":
      return isCount(value);
    case "text":
      return value === null || typeof value === "string";
    case "yes/no":
      return value === null || typeof value === "boolean";
  }
}

/** Whether it is a whole number from zero up. A number that a spreadsheet shows as whole is one. */
export const isCount = (value: Value): value is number =>
  typeof value === "number" && value >= 0 && Number.isSafeInteger(snapped(value));

/** What a person would call it, in a sentence. */
export const unitWords: Readonly<Record<SizeUnit, string>> = {
  length: "a length",
  count: "a whole number from 0 up",
  number: "a number",
  text: "a text",
  "yes/no": "yes or no",
};

/** The kind of the slot that holds a size of that unit. */
export const slotKind = (unit: SizeUnit): FieldKind | "count" =>
  unit === "yes/no" ? "yesNo" : unit;
