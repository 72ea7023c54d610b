/**
 * What one unit of an item weighs, from its cell: a bare number is in the unit of the column's
 * heading, or in pounds; a number with its own unit is in that one.
 */
import { cellText, isBlank, type TypedCell } from "../base/cell";
import { makeFinding, type Finding, type FindingTable } from "../base/finding";
import { pounds, type Pounds } from "../base/units";
import { ownUnitOf, type MeasureKind, type MeasureUnit } from "../measures/measures";
import { readMeasure, readUnit, type ReadMeasure } from "../measures/readMeasure";
import { groupedFigure } from "../measures/writeMeasure";
import type { ItemUnit } from "./itemUnit";

export const itemWeightFindings = {
  "weight-not-a-number": {
    level: "warn",
    says: "The weight of {item} is {found}, which is no weight from zero up.",
    todo: "Type a number such as 0.35, with its unit where the heading has another one. Until then the item is not weighed.",
  },
  "weight-unit-not-known": {
    level: "warn",
    says: "The weight of {item} is {found}, and {unit} is no unit of weight that is known here.",
    todo: "Type lb, oz, kg, g, tonne, N or kN. Until then the item is not weighed.",
  },
  "weight-unit-does-not-fit": {
    level: "warn",
    says: "The weight of {item} is {found}, in {unit}, and the item goes by the {by}.",
    todo: "Type what one unit of the item weighs, such as 1.2 kg. Until then the item is not weighed.",
  },
  "weights-in-other-units": {
    level: "note",
    says: "Weights with a unit of their own, other than {heading} of their heading: {count}, such as {found} of {item}. Their own counts.",
    todo: "Check that it is meant.",
  },
  "weight-comma": {
    level: "note",
    says: "The weight of {item} is {found}, which is read as {read}.",
    todo: "If the comma is a decimal one, type a point instead.",
  },
  "weight-heading-not-known": {
    level: "warn",
    says: "Weights are in {found} by their heading, which is no unit of weight that is known here.",
    todo: "Type lb, oz, kg, g, tonne, N or kN there. Until then a weight without a unit of its own is not known.",
  },
} as const satisfies FindingTable;

/** A unit of weight, of what a foot or metre weighs, or of what a square foot or metre weighs. */
type WeightUnit = { readonly kind: WeightKind; readonly unit: MeasureUnit };
type WeightKind = Extract<MeasureKind, `weight${string}`>;

const weightKinds = ["weight", "weight by length", "weight by area"] as const;
const byPound: WeightUnit = { kind: "weight", unit: ownUnitOf("weight") };

/** The unit that a heading names: pounds where it names none, `null` for one that is not known. */
export function headedWeightUnit(words: TypedCell | undefined): WeightUnit | null {
  const named = words === undefined ? "" : cellText(words.value).trim();
  if (named === "") return byPound;
  for (const kind of weightKinds) {
    const unit = readUnit(named, kind);
    if (unit !== null) return { kind, unit };
  }
  return null;
}

export type WeighedItem = { readonly code: string; readonly unit: ItemUnit };

export type ItemWeight = {
  /** `null` where the cell is blank or cannot be read, which is then told. */
  readonly weight: Pounds | null;
  readonly findings: readonly Finding[];
  /** Whether the cell has a unit of its own that is not the heading's. */
  readonly isInOtherUnit: boolean;
};

const notWeighed: ItemWeight = { weight: null, findings: [], isInOtherUnit: false };

/** `headed` is the heading's unit; `null` for one that is not known. */
export function readItemWeight(
  cell: TypedCell | undefined,
  headed: WeightUnit | null,
  { code, unit: sold }: WeighedItem,
): ItemWeight {
  if (cell === undefined || isBlank(cell.value)) return notWeighed;
  const found = cellText(cell.value).trim();
  const tell = (
    finding: keyof typeof itemWeightFindings,
    values: Readonly<Record<string, string>> = {},
  ): Finding =>
    makeFinding(itemWeightFindings, finding, {
      place: cell.place,
      found,
      values: { item: code, ...values },
    });
  const refuse = (...of: Parameters<typeof tell>): ItemWeight => ({
    ...notWeighed,
    findings: [tell(...of)],
  });

  const own = readIn(cell, headed ?? byPound);
  if ("unknown" in own) return refuse("weight-unit-not-known", { unit: own.unknown });
  if (own.read === null) return refuse("weight-not-a-number");
  const { read, kind } = own;
  // The heading's own finding says why.
  if (headed === null && !read.hasUnit) return notWeighed;
  const each = perUnitSold(read.amount, kind, sold);
  if (each === null) {
    return refuse("weight-unit-does-not-fit", {
      unit: read.unit.name,
      by: sold.by === "piece" ? "piece" : sold.label,
    });
  }
  const findings: Finding[] = [];
  if (read.hasUnsureComma) {
    const words = `${groupedFigure(read.typed, 0)} ${read.unit.name}`;
    findings.push(tell("weight-comma", { read: `${words} (thousands)` }));
  }
  return { weight: pounds(each), findings, isInOtherUnit: read.unit !== headed?.unit };
}

type ReadIn =
  { readonly read: ReadMeasure | null; readonly kind: WeightKind } | { readonly unknown: string };

/** By the heading's unit, or by the cell's own of any of the three kinds. */
function readIn({ value }: TypedCell, headed: WeightUnit): ReadIn {
  const kinds = [headed.kind, ...weightKinds.filter((kind) => kind !== headed.kind)];
  let unknown = "";
  for (const kind of kinds) {
    const read = readMeasure(value, kind, headed.unit);
    if (read.ok) return { read: read.value, kind };
    if (read.error.code === "not-a-number") return { read: null, kind };
    unknown = read.error.unit;
  }
  return { unknown };
}

/** Pounds of one unit sold; `null` where a weight by length or area is no weight of it. */
function perUnitSold(amount: number, kind: WeightKind, { by, inches }: ItemUnit): number | null {
  switch (kind) {
    case "weight":
      return amount;
    case "weight by length":
      return by === "length" ? (amount * inches) / 12 : null;
    case "weight by area":
      return by === "area" ? (amount * inches) / 144 : null;
  }
}
