/**
 * The weight of woven wire mesh and of framing sections, from their sizes.
 *
 * Lengths in inches, areas in square feet, weights in pounds.
 * 1 in = 25.4 mm and 1 lb = 0.45359237 kg exactly (NIST SP 811).
 */
import { pounds, type Inches, type Pounds } from "../../base/units";
import { kilogramsPerPound, metresPerFoot, millimetresPerInch } from "../../measures/measures";

/** Of steel, kg per cubic metre. Source: the density ISO 9044 reckons plain steel with. */
export const steelDensity = 7850;

const squareMetresPerSquareFoot = metresPerFoot ** 2;

/** Square mesh: the clear opening between wires, and the wire's diameter, both more than zero. */
export type Mesh = { readonly opening: Inches; readonly wire: Inches };

/** How the mass is reckoned; `crimped` is what is used, `straight` is its cross-check. */
export const meshRules = {
  /** ISO 9044: mass per area in kg/m2 = d^2 rho / (618.1 p), d and p in mm; the crimp is in the number. */
  crimped: 618.1,
  /** Two sets of straight round wires: pi/4 d^2 rho x 2 / p, which is d^2 rho / (2000/pi p). */
  straight: 2000 / Math.PI,
} as const;

/**
 * Pounds per square foot of mesh. `density` in kg per cubic metre.
 *
 * A 0.135 in wire at a 1.5 in opening weighs 0.736 by ISO 9044 and 0.715 without crimp.
 */
export function meshPerSquareFoot(
  { opening, wire }: Mesh,
  rule: keyof typeof meshRules = "crimped",
  density = steelDensity,
): number {
  const diameter = wire * millimetresPerInch;
  const pitch = (opening + wire) * millimetresPerInch;
  const kilogramsPerSquareMetre = (diameter ** 2 * density) / (meshRules[rule] * pitch);
  return (kilogramsPerSquareMetre * squareMetresPerSquareFoot) / kilogramsPerPound;
}

/** A framing section by its shape, every size in inches, or by its area in square inches. */
export type Section =
  | { readonly kind: "angle"; readonly legs: readonly [Inches, Inches]; readonly thickness: Inches }
  | {
      readonly kind: "channel";
      readonly web: Inches;
      readonly flange: Inches;
      readonly thickness: Inches;
    }
  | {
      readonly kind: "tube";
      readonly sides: readonly [Inches, Inches];
      readonly thickness: Inches;
    }
  | { readonly kind: "pipe"; readonly outside: Inches; readonly thickness: Inches }
  | { readonly kind: "bar"; readonly sides: readonly [Inches, Inches] }
  | { readonly kind: "area"; readonly squareInches: number };

/** Square inches of a section with sharp corners: fillets and rolled radii are left out. */
export function sectionArea(section: Section): number {
  switch (section.kind) {
    case "angle":
      return section.thickness * (section.legs[0] + section.legs[1] - section.thickness);
    case "channel":
      return section.thickness * (section.web + 2 * section.flange - 2 * section.thickness);
    case "tube":
      return section.thickness * 2 * (section.sides[0] + section.sides[1] - 2 * section.thickness);
    case "pipe":
      return Math.PI * section.thickness * (section.outside - section.thickness);
    case "bar":
      return section.sides[0] * section.sides[1];
    case "area":
      return section.squareInches;
  }
}

/** Pounds per foot of a section. `density` in kg per cubic metre. */
export function sectionPerFoot(section: Section, density = steelDensity): Pounds {
  const cubicMetresPerFoot = sectionArea(section) * 12 * (millimetresPerInch / 1000) ** 3;
  return pounds((cubicMetresPerFoot * density) / kilogramsPerPound);
}
