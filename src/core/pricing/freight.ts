/**
 * Freight by a rate table: so much per hundredweight (100 lb), less the more a shipment weighs, and
 * never less than a least charge.
 *
 * A shipment may always be charged as if it weighed the next break, and is when that costs less
 * ("deficit weight" in carriers' tariffs): the charge is the least of its own weight at its own rate
 * and each higher break's weight at that break's rate.
 */
import { cents, pounds, type Cents, type Pounds, type TenThousandths } from "../base/units";
import type { MeasureStyle } from "../measures/measures";
import { measureText } from "../measures/writeMeasure";
import { extend } from "../money/amounts";
import { usDollar, type Currency } from "../money/currency";
import { moneyText, unitCostText } from "../money/writeMoney";
import type { NamedCost } from "./rollup/rollUpInput";

/** From `from` pounds on, this much per hundredweight. */
export type FreightBreak = { readonly from: Pounds; readonly rate: TenThousandths };

export type FreightTable = {
  readonly name: string;
  /** In any order; the lightest also serves what weighs less. At least one. */
  readonly breaks: readonly [FreightBreak, ...FreightBreak[]];
  readonly least: Cents;
  readonly basis: string;
};

export type FreightCharge = {
  /** Whole pounds, rounded up, as carriers bill (common practice, no source). */
  readonly weight: Pounds;
  /** What is charged for; more than `weight` where the next break is cheaper. */
  readonly billed: Pounds;
  readonly rate: TenThousandths;
  readonly charge: Cents;
  /** The table's least charge stands instead of weight x rate. */
  readonly isLeast: boolean;
  /** What charging by the next break saves; zero where it does not. */
  readonly saved: Cents;
  readonly because: string;
};

const chargeFor = (weight: number, rate: TenThousandths): Cents => extend(weight / 100, rate);

/**
 * The charge for one shipment. Nothing to ship costs nothing. On a tie the lower weight is billed.
 * `currency` and `style` are those of the words.
 */
export function freightCharge(
  shipped: Pounds,
  table: FreightTable,
  currency: Currency = usDollar,
  style: MeasureStyle = "pounds",
): FreightCharge {
  // The millionth keeps a sum that doubles left a hair above a whole pound from costing another.
  const weight = pounds(Math.max(0, Math.ceil(shipped - 1e-6)));
  const breaks = table.breaks.toSorted((a, b) => a.from - b.from);
  const own = breaks.findLast(({ from }) => from <= weight) ?? table.breaks[0];
  const higher = breaks.filter(({ from }) => from > weight);
  const options = [{ billed: weight, rate: own.rate }].concat(
    higher.map(({ from, rate }) => ({ billed: from, rate })),
  );
  const best = options.reduce((least, next) =>
    chargeFor(next.billed, next.rate) < chargeFor(least.billed, least.rate) ? next : least,
  );
  const atRate = weight === 0 ? cents(0) : chargeFor(best.billed, best.rate);
  const isLeast = weight > 0 && atRate < table.least;
  const charge = isLeast ? table.least : atRate;
  const atOwnRate = chargeFor(weight, own.rate);
  const unbroken = atOwnRate < table.least ? table.least : atOwnRate;
  return {
    weight,
    billed: best.billed,
    rate: best.rate,
    charge,
    isLeast,
    saved: weight === 0 ? cents(0) : cents(unbroken - charge),
    because: words({ weight, ...best, charge, isLeast }, currency, style),
  };
}

type Billed = Pick<FreightCharge, "weight" | "billed" | "rate" | "charge" | "isLeast">;

/** In pounds, which rates are by; in kilograms too where those are used: `500 lb (226.8 kg)`. */
export const billedText = (weight: number, style: MeasureStyle): string => {
  const inPounds = measureText(weight, "weight", "pounds", 0);
  return style === "pounds" ? inPounds : `${inPounds} (${measureText(weight, "weight", style, 1)})`;
};

/** Such as `1,787 lb charged as 2,000 lb`. */
const weightWords = (
  { weight, billed }: Pick<Billed, "weight" | "billed">,
  style: MeasureStyle,
): string =>
  billed > weight
    ? `${billedText(weight, style)} charged as ${billedText(billed, style)}`
    : billedText(weight, style);

function words(billed: Billed, currency: Currency, style: MeasureStyle): string {
  if (billed.weight === 0) return "nothing to ship";
  const rated = `${weightWords(billed, style)} at ${unitCostText(billed.rate, currency)} per hundredweight`;
  const charge = moneyText(billed.charge, currency);
  return billed.isLeast
    ? `${rated} is below the least charge of ${charge}`
    : `${rated} = ${charge}`;
}

/**
 * The weight within a break from which charging by the next break costs less or the same: that
 * break's charge over this one's rate, in pounds. `null` for the last break. It may lie above the
 * next break's own weight where the rates do not fall.
 */
export function breakEvenWeight(table: FreightTable, index: number): number | null {
  const breaks = table.breaks.toSorted((a, b) => a.from - b.from);
  const [own, next] = [breaks[index], breaks[index + 1]];
  return own === undefined || next === undefined ? null : (next.from * next.rate) / own.rate;
}

/** The charge as a cost of the roll-up: billed hundredweights at the rate, or the least charge. */
export const freightCost = (
  name: string,
  charge: FreightCharge,
  style: MeasureStyle = "pounds",
): NamedCost =>
  charge.isLeast || charge.weight === 0
    ? {
        name,
        kind: "typed",
        amount: charge.charge,
        how: charge.isLeast
          ? `the least charge, for ${billedText(charge.weight, style)}`
          : "nothing to ship",
      }
    : {
        name,
        kind: "times",
        quantity: charge.billed / 100,
        unit: "hundredweight",
        each: charge.rate,
        how: weightWords(charge, style),
      };
