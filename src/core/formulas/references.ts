/** What a formula reads, for dependency graphs. */
import type { Formula } from "./formula";
import { normalName } from "./names";

/** The names of sizes and fields that the formula reads, each once, in the order of the text. */
export const referencesOf = (formula: Formula): readonly string[] => [
  ...new Set(formula.names.map(({ name }) => name)),
];

/** The charts it looks into, each once, spelt as `normalName` does, in the order of the text. */
export const chartsOf = (formula: Formula): readonly string[] => [
  ...new Set(formula.charts.map(({ chart }) => normalName(chart))),
];
