/**
 * Dimensions of the fasteners that the starter kit book names, in inches, from published standards.
 * Pairs are maximum and minimum.
 */

type Range = { readonly most: number; readonly least: number };

export type FastenerSize = {
  readonly nominal: string;
  readonly diameter: number;
  /** Unified coarse threads per inch. Source: ASME B1.1. */
  readonly threads: number;
  /** Square inches. Source: ASME B1.1, 0.7854 (D - 0.9743 / n)^2. */
  readonly stressArea: number;
  /** Round head square neck bolts. Source: ASME B18.5. */
  readonly carriageHead: { readonly diameter: Range; readonly height: Range };
  readonly carriageNeck: { readonly square: Range; readonly depth: Range };
  /** Hex bolts, basic. Source: ASME B18.2.1. */
  readonly hexHead: { readonly acrossFlats: number; readonly height: number };
  /** Hex nuts, basic; across flats as the bolt's head. Source: ASME B18.2.2. */
  readonly nut: { readonly acrossFlats: number; readonly thickness: number };
  /** Plain washers type B regular. Source: ASME B18.21.1, value from memory. */
  readonly washer: {
    readonly inside: number;
    readonly outside: number;
    readonly thickness: number;
  };
  /** Helical spring lock washers regular, section. Source: ASME B18.21.1, value from memory. */
  readonly lockWasher: { readonly width: number; readonly thickness: number };
};

const range = (most: number, least: number): Range => ({ most, least });

export const fastenerSizes: readonly FastenerSize[] = [
  {
    nominal: "1/4",
    diameter: 1 / 4,
    threads: 20,
    stressArea: 0.0318,
    carriageHead: { diameter: range(0.594, 0.563), height: range(0.145, 0.125) },
    carriageNeck: { square: range(0.26, 0.245), depth: range(0.156, 0.125) },
    hexHead: { acrossFlats: 7 / 16, height: 11 / 64 },
    nut: { acrossFlats: 7 / 16, thickness: 7 / 32 },
    washer: { inside: 0.281, outside: 0.734, thickness: 0.063 },
    lockWasher: { width: 0.109, thickness: 0.062 },
  },
  {
    nominal: "5/16",
    diameter: 5 / 16,
    threads: 18,
    stressArea: 0.0524,
    carriageHead: { diameter: range(0.719, 0.688), height: range(0.176, 0.156) },
    carriageNeck: { square: range(0.324, 0.307), depth: range(0.187, 0.156) },
    hexHead: { acrossFlats: 1 / 2, height: 7 / 32 },
    nut: { acrossFlats: 1 / 2, thickness: 17 / 64 },
    washer: { inside: 0.344, outside: 0.875, thickness: 0.063 },
    lockWasher: { width: 0.125, thickness: 0.078 },
  },
  {
    nominal: "1/2",
    diameter: 1 / 2,
    threads: 13,
    stressArea: 0.1419,
    carriageHead: { diameter: range(1.094, 1.032), height: range(0.27, 0.25) },
    carriageNeck: { square: range(0.515, 0.492), depth: range(0.281, 0.25) },
    hexHead: { acrossFlats: 3 / 4, height: 11 / 32 },
    nut: { acrossFlats: 3 / 4, thickness: 7 / 16 },
    washer: { inside: 0.531, outside: 1.25, thickness: 0.1 },
    lockWasher: { width: 0.171, thickness: 0.125 },
  },
];

/** Steel, 7850 kg/m3 in pounds per cubic inch. Source: 1 in and 1 lb exactly as NIST SP 811 has them. */
export const steel = (7850 * 0.0254 ** 3) / 0.45359237;
