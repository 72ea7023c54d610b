/** What can be moved, as a person reads it. */
import type { RangeSubject } from "../../core/pricing/chances/ownerRanges";
import type { Factor } from "../../core/pricing/chances/whatIf";

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

export const rangeWords = (subject: RangeSubject, family: string): string =>
  subject === "material" ? `Material: ${family}` : words[subject];
