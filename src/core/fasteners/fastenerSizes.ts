/**
 * Dimensions of the fasteners that partitions are put together with, in inches, from published standards.
 *
 * Where the standard gives limits both are here: a check takes the one that is worse for it. Uncoated
 * steel; a thick coating adds to them.
 */

export type Range = { readonly least: number; readonly most: number };

export type FastenerSize = {
  /** As it is written: `1/4`. */
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
  /** Hex nuts; across flats is basic. Source: ASME B18.2.2. */
  readonly nut: { readonly acrossFlats: number; readonly thickness: Range };
  /** Hex flange nuts. Source: ASME B18.2.2, value from memory. */
  readonly flangeNut: { readonly thickness: Range };
  /** Plain washers, type B regular; diameters are basic. Source: ASME B18.21.1, value from memory. */
  readonly washer: {
    readonly inside: number;
    readonly outside: number;
    readonly thickness: Range;
  };
  /** Helical spring lock washers, regular: section. Source: ASME B18.21.1. */
  readonly lockWasher: { readonly width: number; readonly thickness: number };
};

/** Most, then least: the order in which the standards print them. */
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
    nut: { acrossFlats: 7 / 16, thickness: range(0.226, 0.212) },
    flangeNut: { thickness: range(0.236, 0.222) },
    washer: { inside: 0.281, outside: 0.734, thickness: range(0.071, 0.056) },
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
    nut: { acrossFlats: 1 / 2, thickness: range(0.273, 0.258) },
    flangeNut: { thickness: range(0.283, 0.268) },
    washer: { inside: 0.344, outside: 0.875, thickness: range(0.071, 0.056) },
    lockWasher: { width: 0.125, thickness: 0.078 },
  },
  {
    nominal: "3/8",
    diameter: 3 / 8,
    threads: 16,
    stressArea: 0.0775,
    carriageHead: { diameter: range(0.844, 0.782), height: range(0.208, 0.188) },
    carriageNeck: { square: range(0.388, 0.368), depth: range(0.219, 0.188) },
    hexHead: { acrossFlats: 9 / 16, height: 1 / 4 },
    nut: { acrossFlats: 9 / 16, thickness: range(0.337, 0.32) },
    flangeNut: { thickness: range(0.347, 0.33) },
    washer: { inside: 0.406, outside: 1, thickness: range(0.071, 0.056) },
    lockWasher: { width: 0.141, thickness: 0.094 },
  },
  {
    nominal: "1/2",
    diameter: 1 / 2,
    threads: 13,
    stressArea: 0.1419,
    carriageHead: { diameter: range(1.094, 1.032), height: range(0.27, 0.25) },
    carriageNeck: { square: range(0.515, 0.492), depth: range(0.281, 0.25) },
    hexHead: { acrossFlats: 3 / 4, height: 11 / 32 },
    nut: { acrossFlats: 3 / 4, thickness: range(0.448, 0.427) },
    flangeNut: { thickness: range(0.464, 0.442) },
    washer: { inside: 0.531, outside: 1.25, thickness: range(0.112, 0.09) },
    lockWasher: { width: 0.171, thickness: 0.125 },
  },
];

/**
 * Inches of thread on a bolt of up to 6 in: twice the diameter and a quarter inch; a shorter bolt is
 * threaded all along. Source: ASME B18.2.1; for round head square neck bolts ASME B18.5, value from memory.
 */
export const threadLength = ({ diameter }: FastenerSize): number => 2 * diameter + 1 / 4;
