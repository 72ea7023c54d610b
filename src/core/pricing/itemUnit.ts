/** What an item is priced and weighed by: the piece, its length or its area. */
import type { Inches } from "../base/units";
import { snapped } from "../formulas/rounding";
import { millimetresPerInch } from "../measures/measures";

export type ItemUnit = {
  /** As shown: `each`, `foot`, `set`. */
  readonly label: string;
  readonly by: "piece" | "length" | "area";
  /** Inches (or square inches) in one unit; 1 where it goes by the piece. */
  readonly inches: number;
};

const foot = { label: "foot", by: "length", inches: 12 } as const;
const squareFoot = { label: "square foot", by: "area", inches: 144 } as const;
const metre = { label: "metre", by: "length", inches: 1000 / millimetresPerInch } as const;
const squareMetre = {
  label: "square metre",
  by: "area",
  inches: (1000 / millimetresPerInch) ** 2,
} as const;

const several: Readonly<Record<string, string>> = {
  foot: "feet",
  "square foot": "square feet",
  metre: "metres",
  "square metre": "square metres",
};

export const each: ItemUnit = { label: "each", by: "piece", inches: 1 };

const named: Readonly<Record<string, ItemUnit>> = {
  "": each,
  each,
  ea: each,
  pc: each,
  pcs: each,
  piece: each,
  pieces: each,
  no: each,
  unit: each,
  foot,
  feet: foot,
  ft: foot,
  lf: foot,
  "lin ft": foot,
  "linear foot": foot,
  "linear feet": foot,
  "square foot": squareFoot,
  "square feet": squareFoot,
  "sq ft": squareFoot,
  sf: squareFoot,
  sqft: squareFoot,
  ft2: squareFoot,
  metre,
  meter: metre,
  m: metre,
  "lin m": metre,
  "square metre": squareMetre,
  "square meter": squareMetre,
  "sq m": squareMetre,
  m2: squareMetre,
  sqm: squareMetre,
};

/** The unit of that name in any case; a word that is not known (`set`, `pair`) goes by the piece. */
export function readItemUnit(text: string): ItemUnit {
  const word = text
    .normalize("NFKC")
    .trim()
    .replace(/\.$/, "")
    .replace(/[.\s]+/g, " ")
    .toLowerCase();
  const unit = Object.hasOwn(named, word) ? named[word] : undefined;
  return unit ?? { ...each, label: text.trim() };
}

/**
 * How many units one piece of that size is, to four decimals, half away from zero: the figure that
 * the sheet shows and that is multiplied by. `null` where the unit needs a size that is not there.
 */
export function unitsPerPiece(unit: ItemUnit, size: readonly Inches[]): number | null {
  if (unit.by === "piece") return 1;
  const [first, second] = size;
  if (first === undefined) return null;
  if (unit.by === "length") return toFourDecimals(first / unit.inches);
  return second === undefined ? null : toFourDecimals((first * second) / unit.inches);
}

const toFourDecimals = (value: number): number => Math.round(snapped(value * 10_000)) / 10_000;

/** The unit's name for more than one: `square feet`, `metres`; any other stays as it is: `set`. */
export const severalOf = ({ label }: ItemUnit): string => several[label] ?? label;
