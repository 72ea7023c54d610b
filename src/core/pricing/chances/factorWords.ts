/** What can be moved, as a person reads it on the pane and on sheets. */
import type { RangeSubject } from "./ownerRanges";
import type { Factor } from "./whatIf";

const words: Readonly<Record<Exclude<RangeSubject, "material">, string>> = {
  hours: "Labour hours",
  rate: "Wages",
  freight: "Freight",
  price: "Price",
};

export const factorWords = (factor: Factor): string =>
  factor.kind === "material"
    ? `Material: ${factor.family}`
    : factor.kind === "discount"
      ? "Discount"
      : words[factor.kind];

export const rangeLabel = (subject: RangeSubject, family: string): string =>
  subject === "material" ? `Material: ${family}` : words[subject];
