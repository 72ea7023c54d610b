/** Weights, loads and bending as text, in pounds or metric, with commas between thousands. */
import {
  ownUnitOf,
  unitsOf,
  type MeasureKind,
  type MeasureStyle,
  type MeasureUnit,
} from "./measures";

const metricNames: Readonly<Record<MeasureKind, string>> = {
  weight: "kg",
  "weight by length": "kg per m",
  "weight by area": "kg per m²",
  bending: "N·m",
  length: "mm",
  inertia: "cm^4",
};

/** The unit in which a kind is shown. */
export const shownUnit = (kind: MeasureKind, style: MeasureStyle): MeasureUnit =>
  style === "pounds"
    ? ownUnitOf(kind)
    : (unitsOf[kind].find(({ name }) => name === metricNames[kind]) ?? ownUnitOf(kind));

/** An amount of the core's own unit in the unit in which it is shown. In pounds it is as it was. */
export function shownAmount(amount: number, kind: MeasureKind, style: MeasureStyle): number {
  const { inOne } = shownUnit(kind, style);
  return inOne === 1 ? amount : amount * inOne;
}

/** `1,240.5`: with at most so many decimals, no zeros at their end, and commas between thousands. */
export function groupedFigure(value: number, places: number): string {
  return withCommas(String(Number(value.toFixed(places))));
}

/** A number's text with commas between the thousands before its point. */
export function withCommas(number: string): string {
  const [whole = "", decimals] = number.split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ",");
  return decimals === undefined ? grouped : `${grouped}.${decimals}`;
}

/** A length as a number: inches to three decimals, or millimetres to one, as lengths are written. */
export const lengthFigure = (length: number, style: MeasureStyle): string =>
  String(Number(shownAmount(length, "length", style).toFixed(style === "metric" ? 1 : 3)));

/** The same with its unit: `96 in`, `2438.4 mm`. */
export const placeText = (length: number, style: MeasureStyle): string =>
  `${lengthFigure(length, style)} ${shownUnit("length", style).name}`;

/** Such as `1,787 lb` or `810.6 kg`, of an amount in the core's own unit. */
export const measureText = (
  amount: number,
  kind: MeasureKind,
  style: MeasureStyle,
  places: number,
): string =>
  `${groupedFigure(shownAmount(amount, kind, style), places)} ${shownUnit(kind, style).name}`;
