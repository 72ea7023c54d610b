import type { Value } from "../formulas/value";

/** Whether a condition holds: `TRUE`, or a number other than zero, as in a spreadsheet's IF. */
export const isTrue = (value: Value): boolean =>
  value === true || (typeof value === "number" && value !== 0);
