/**
 * Weights, bending and what goes with them, in the units that people use: the one place where they
 * are converted. The core reckons in inches and pounds throughout.
 *
 * 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 lb = 0.45359237 kg and 1 lbf = 4.4482216152605 N, all exactly
 * (NIST SP 811, appendix B; the pound and the inch by the international agreement of 1959).
 */
import type { LengthStyle } from "../lengths/writeLength";

export const kilogramsPerPound = 0.45359237;
export const newtonsPerPound = 4.4482216152605;
export const millimetresPerInch = 25.4;
export const metresPerFoot = 0.3048;

/** What is measured. The first unit of each, as `unitsOf` lists them, is the core's own. */
export const measureKinds = [
  "weight",
  "weight by length",
  "weight by area",
  "bending",
  "length",
  "inertia",
] as const;
export type MeasureKind = (typeof measureKinds)[number];

export type MeasureUnit = {
  /** As it is written behind a number. */
  readonly name: string;
  /** So many of it make one of the core's own unit. */
  readonly inOne: number;
  /** How else people write it, plain: in small letters, a stroke for `per`, nothing between words. */
  readonly words: readonly string[];
};

const unit = (name: string, inOne: number, ...words: readonly string[]): MeasureUnit => ({
  name,
  inOne,
  words,
});

const poundWords = ["lb", "lbs", "lbf", "pound", "pounds", "#"];
const kilogramWords = [
  ...["kg", "kgs", "kgf", "kilo", "kilos"],
  ...["kilogram", "kilograms", "kilogramme", "kilogrammes"],
];
const footWords = ["ft", "foot", "feet", "lf", "linft", "linearfoot"];
const metreWords = ["m", "metre", "metres", "meter", "meters", "linm"];

const eachOf = (
  first: readonly string[],
  between: string,
  second: readonly string[],
): readonly string[] => first.flatMap((one) => second.map((other) => one + between + other));

const newtonMetre = newtonsPerPound * (millimetresPerInch / 1000);

/** Units that may be typed. A ton is none of them: it may be any of three. */
export const unitsOf: Readonly<Record<MeasureKind, readonly [MeasureUnit, ...MeasureUnit[]]>> = {
  weight: [
    unit("lb", 1, ...poundWords),
    unit("kg", kilogramsPerPound, ...kilogramWords),
    unit("oz", 16, "oz", "ounce", "ounces"),
    unit("g", kilogramsPerPound * 1000, "g", "gram", "grams", "gramme", "grammes"),
    unit("N", newtonsPerPound, "n", "newton", "newtons"),
    unit("kN", newtonsPerPound / 1000, "kn", "kilonewton", "kilonewtons"),
    unit("tonne", kilogramsPerPound / 1000, "tonne", "tonnes"),
  ],
  "weight by length": [
    unit("lb per ft", 1, ...eachOf(poundWords, "/", footWords), "plf"),
    unit("kg per m", kilogramsPerPound / metresPerFoot, ...eachOf(kilogramWords, "/", metreWords)),
    unit("N per m", newtonsPerPound / metresPerFoot, ...eachOf(["n"], "/", metreWords)),
    unit("kN per m", newtonsPerPound / metresPerFoot / 1000, ...eachOf(["kn"], "/", metreWords)),
  ],
  "weight by area": [
    unit("lb per sq ft", 1, ...eachOf(poundWords, "/", ["sqft", "sf", "ft2", "squarefoot"]), "psf"),
    unit(
      "kg per m²",
      kilogramsPerPound / metresPerFoot ** 2,
      ...eachOf(kilogramWords, "/", ["m2", "sqm", "squaremetre", "squaremeter"]),
    ),
  ],
  bending: [
    unit("in-lb", 1, "inlb", "inlbs", "inlbf", "lbin", "lbsin", "lbfin", "inchpound", "inchpounds"),
    unit("ft-lb", 1 / 12, "ftlb", "ftlbs", "ftlbf", "lbft", "lbsft", "lbfft", "footpounds"),
    unit("N·m", newtonMetre, "nm", "newtonmetre", "newtonmetres", "newtonmeter", "newtonmeters"),
    unit("kN·m", newtonMetre / 1000, "knm"),
    unit("N·mm", newtonMetre * 1000, "nmm"),
  ],
  length: [
    unit("in", 1, "in", "inch", "inches", '"'),
    unit("mm", millimetresPerInch, "mm", "millimetre", "millimetres", "millimeter", "millimeters"),
    unit("cm", millimetresPerInch / 10, "cm", "centimetre", "centimetres"),
    unit("m", millimetresPerInch / 1000, ...metreWords.slice(0, 5)),
    unit("ft", 1 / 12, "ft", "foot", "feet", "'"),
  ],
  inertia: [
    unit("in^4", 1, "in4", "inch4", "inches4"),
    unit("mm^4", millimetresPerInch ** 4, "mm4"),
    unit("cm^4", (millimetresPerInch / 10) ** 4, "cm4"),
  ],
};

/** The core's own unit of a kind. */
export const ownUnitOf = (kind: MeasureKind): MeasureUnit => unitsOf[kind][0];

/** How weights and loads are shown: as a workbook's lengths are. */
export type MeasureStyle = "pounds" | "metric";

/** Metric where lengths are written in millimetres. */
export const measureStyleOf = ({ kind }: LengthStyle): MeasureStyle =>
  kind === "mm" ? "metric" : "pounds";
