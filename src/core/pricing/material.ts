/** What the lines of a job cost and weigh: priced from the items table, rounded once a line. */
import { makeFinding, type Finding, type FindingTable } from "../base/finding";
import { cents, pieces, type Cents, type Pieces } from "../base/units";
import { canExtend, extend } from "../money/amounts";
import { sumOf } from "../money/amounts";
import { numberText } from "../takeoff/describe";
import { isAdded, type CorrectedLine } from "../corrections/correctedLine";
import { itemKey, type Item, type Items, type SparesPolicy } from "./item";
import { unitsPerPiece } from "./itemUnit";

/** A line with its item and what follows from it. */
export type MaterialLine = {
  readonly line: CorrectedLine;
  /** `null` where the items table does not have it. */
  readonly item: Item | null;
  /** As typed, or by the item's rule for the quantity after corrections. */
  readonly spares: Pieces;
  /** The quantity after corrections, and spares. */
  readonly toOrder: Pieces;
  /** Units (feet, square feet …) in one piece, to four decimals; `null` where a size is missing. */
  readonly unitsEach: number | null;
  /** `null` where it cannot be priced, which is not zero. */
  readonly cost: Cents | null;
  /** Whether orders say what it costs, in all or in part, and not the items table alone. */
  readonly isOrdered?: true;
  /** Pounds of all pieces to order; `null` where it is not known. */
  readonly weight: number | null;
};

export type FamilyCost = {
  readonly family: string;
  readonly cost: Cents;
  readonly unpriced: number;
};

export type Material = {
  /**
   * By family in the order of the items table, then by item in its order, then by size. What is not in
   * the table comes last but for what was added by hand.
   */
  readonly lines: readonly MaterialLine[];
  readonly families: readonly FamilyCost[];
  /** The sum of what could be priced; `null` where nothing could. */
  readonly total: Cents | null;
  /** Items with a line that could not be priced, each once. */
  readonly unpriced: readonly string[];
  /** Pounds of what could be weighed. */
  readonly weight: number;
  /** Items with a line that could not be weighed, each once. */
  readonly unweighed: readonly string[];
};

export const materialFindings = {
  "item-unknown": {
    level: "warn",
    says: "The items table has no {found}: it is counted, and neither priced nor weighed.",
    todo: "Add a row with this code to the items table, or mend the code in the kit book.",
  },
  "item-unpriced": {
    level: "warn",
    says: "{found} has no unit cost: it is counted and not priced.",
    todo: "Type its unit cost in the items table.",
  },
  "cost-too-large": {
    level: "warn",
    says: "{found} comes to more money than can be counted exactly: it is not priced.",
    todo: "Check its quantity and its unit cost.",
  },
  "item-without-size": {
    level: "warn",
    says: "{found} is priced by the {unit}, and the kit book gives it no size: it is not priced.",
    todo: "Give its kit-book row a size or cut length, or price it by the piece.",
  },
} as const satisfies FindingTable;

const otherFamily = "Not in the items table";
/** The family of lines that a person added, whatever the item's own. */
export const addedFamily = "Added by hand";

/** The family under which a line is listed. */
export const familyOf = ({ line, item }: Pick<MaterialLine, "line" | "item">): string =>
  isAdded(line) ? addedFamily : (item?.family ?? otherFamily);

/** Prices and weighs the lines of one job. */
export function priceMaterial(lines: readonly CorrectedLine[], items: Items): Material {
  const order = new Map([...items.keys()].map((key, index) => [key, index]));
  const own = [...items.values()].map((item) => item.family);
  const families = [...new Set(own), otherFamily].filter((family) => family !== addedFamily);
  families.push(addedFamily);
  const priced = lines
    .map((line) => priceLine(line, items))
    .sort(
      (a, b) =>
        families.indexOf(familyOf(a)) - families.indexOf(familyOf(b)) ||
        (order.get(itemKey(a.line.item)) ?? order.size) -
          (order.get(itemKey(b.line.item)) ?? order.size) ||
        a.line.item.localeCompare(b.line.item, "en", { numeric: true }) ||
        compareSizes(a.line.size, b.line.size),
    );
  return materialOf(priced, families);
}

/** Lines that are priced, summed up by family and in all. */
export function materialOf(priced: readonly MaterialLine[], families: readonly string[]): Material {
  const known = priced.flatMap((line) => (line.cost === null ? [] : [line.cost]));
  return {
    lines: priced,
    families: families.flatMap((family) => {
      const ofFamily = priced.filter((line) => familyOf(line) === family);
      return ofFamily.length === 0 ? [] : [familyCost(family, ofFamily)];
    }),
    total: known.length === 0 ? null : sumOf(known),
    unpriced: itemsWhere(priced, (line) => line.cost === null),
    weight: priced.reduce((sum, line) => sum + (line.weight ?? 0), 0),
    unweighed: itemsWhere(priced, (line) => line.weight === null),
  };
}

/** What could not be priced, one finding per item over all jobs. */
export function materialDoubts(materials: readonly Material[]): readonly Finding[] {
  const doubts = new Map<string, Finding>();
  for (const { line, item, cost, unitsEach } of materials.flatMap((material) => material.lines)) {
    if (cost !== null || doubts.has(itemKey(line.item))) continue;
    const code =
      item === null
        ? "item-unknown"
        : unitsEach === null
          ? "item-without-size"
          : item.unitCost === null
            ? "item-unpriced"
            : "cost-too-large";
    const values = { unit: item?.unit.label ?? "" };
    doubts.set(
      itemKey(line.item),
      makeFinding(materialFindings, code, { place: item?.place ?? null, found: line.item, values }),
    );
  }
  return [...doubts.values()];
}

/** Spares for a count: its percentage rounded up, and at least so many; none for a count of zero. */
export function sparesFor(quantity: Pieces, policy: SparesPolicy): Pieces {
  if (quantity === 0) return pieces(0);
  // Twelve digits: 5 % of 140 must be 7 and not the next whole number above 7.000000000000001.
  const share = Math.ceil(Number(((quantity * policy.percent) / 100).toPrecision(12)));
  return pieces(Math.max(share, policy.least));
}

function priceLine(line: CorrectedLine, items: Items): MaterialLine {
  const item = items.get(itemKey(line.item)) ?? null;
  if (item === null) {
    const spares = line.ownSpares ?? pieces(0);
    const toOrder = pieces(line.quantity + spares);
    return { line, item, spares, toOrder, unitsEach: null, cost: null, weight: null };
  }
  const spares = line.ownSpares ?? sparesFor(line.quantity, item.spares);
  const toOrder = pieces(line.quantity + spares);
  const unitsEach = unitsPerPiece(item.unit, line.size);
  const units = unitsEach === null ? null : Number((toOrder * unitsEach).toFixed(4));
  return {
    line,
    item,
    spares,
    toOrder,
    unitsEach,
    cost: costOf(units, item),
    weight: units === null || item.weight === null ? null : Number(numberText(units * item.weight)),
  };
}

const costOf = (units: number | null, { unitCost }: Item): Cents | null =>
  units !== null && unitCost !== null && canExtend(units, unitCost)
    ? extend(units, unitCost)
    : null;

const familyCost = (family: string, lines: readonly MaterialLine[]): FamilyCost => ({
  family,
  cost: sumOf(lines.map((line) => line.cost ?? cents(0))),
  unpriced: lines.filter((line) => line.cost === null).length,
});

const itemsWhere = (
  lines: readonly MaterialLine[],
  isWanted: (line: MaterialLine) => boolean,
): readonly string[] => [...new Set(lines.filter(isWanted).map((line) => line.line.item))];

function compareSizes(a: readonly number[], b: readonly number[]): number {
  for (const [index, length] of a.entries()) {
    const difference = length - (b[index] ?? 0);
    if (difference !== 0) return difference;
  }
  return a.length - b.length;
}
