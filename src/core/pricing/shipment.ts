/** What a job's shipment weighs, pallets included, with whatever has no weight named. */
import { pounds, type Pieces, type Pounds } from "../base/units";
import type { MeasureStyle } from "../measures/measures";
import { measureText } from "../measures/writeMeasure";

/** A line of a job's list. `weight` is of all its pieces; `null` is not known. */
export type ShippedLine = { readonly name: string; readonly weight: Pounds | null };

/** How the firm stacks pallets. */
export type PalletRule = {
  /** What one pallet carries; more than zero. */
  readonly carries: Pounds;
  /** What an empty one weighs. */
  readonly own: Pounds;
  /** A shipment that weighs anything goes on at least so many. */
  readonly least: Pieces;
};

export type ShipmentWeight = {
  readonly goods: Pounds;
  readonly pallets: number;
  readonly palletWeight: Pounds;
  /** Goods and pallets; only a least where something is not weighed. */
  readonly weight: Pounds;
  readonly notWeighed: readonly string[];
  readonly because: string;
};

/** Weighs a shipment. `null` for pallets ships loose. Nothing to ship needs no pallet. `style`: of the words. */
export function shipmentWeight(
  lines: readonly ShippedLine[],
  rule: PalletRule | null,
  style: MeasureStyle = "pounds",
): ShipmentWeight {
  const goods = pounds(lines.reduce((sum, { weight }) => sum + (weight ?? 0), 0));
  // The millionth keeps a sum that doubles left a hair above a full pallet from asking for another.
  const needed = rule === null ? 0 : Math.ceil(goods / rule.carries - 1e-6);
  const pallets = rule === null || goods === 0 ? 0 : Math.max(rule.least, needed);
  const palletWeight = pounds(pallets * (rule?.own ?? 0));
  const shown = (weight: number): string => measureText(weight, "weight", style, 1);
  const loose = `${shown(goods)} of goods`;
  return {
    goods,
    pallets,
    palletWeight,
    weight: pounds(goods + palletWeight),
    notWeighed: lines.filter(({ weight }) => weight === null).map(({ name }) => name),
    because:
      rule === null || pallets === 0
        ? `${loose}, no pallets`
        : `${loose} at ${shown(rule.carries)} a pallet: ${pallets} x ${shown(rule.own)} = ` +
          `${shown(palletWeight)}, together ${shown(goods + palletWeight)}`,
  };
}
