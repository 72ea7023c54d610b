/** An item's description or code to a fastener: `Carriage bolt (round head square neck), 1/4-20 x 1-1/4 in`. */
import { fastenerSizes, type FastenerSize } from "./fastenerSizes";

export const fastenerKinds = [
  "carriage bolt",
  "hex bolt",
  "hex nut",
  "flange nut",
  "flat washer",
  "lock washer",
] as const;
export type FastenerKind = (typeof fastenerKinds)[number];

export type Fastener = {
  readonly kind: FastenerKind;
  /** As written: `1/4`. */
  readonly nominal: string;
  /** `null` where the dimensions of that size are not known here. */
  readonly size: FastenerSize | null;
  /** Threads per inch, where they are written. */
  readonly threads: number | null;
  /** Inches, of a bolt; `null` where none is written. */
  readonly length: number | null;
};

/** The first that fits; the order matters, since a hex flange nut is called a hex nut too. */
const kindWords: readonly (readonly [RegExp, FastenerKind | null])[] = [
  // Their thickness, or their length under the head, is another.
  [/\b(jam|lock|wing|cap|acorn|coupling|square|weld|t)[ -]?nuts?\b/, null],
  [/\b(fender|wide|narrow|tooth|star|bevel\w*|square) washers?\b/, null],
  [/\b(short neck|countersunk|flat head|machine|lag|anchor|eye|u)[ -](bolt|screw|square)/, null],
  [/\bcarriage bolts?\b|\bround head square neck\b|^cb\b/, "carriage bolt"],
  [/\bflange nuts?\b|\bnuts?, hex flange\b|^fn\b/, "flange nut"],
  [
    /\block ?washers?\b|\bsplit washers?\b|\bhelical spring\b|\bwashers?, lock\b|^lw\b/,
    "lock washer",
  ],
  [/\b(flat|plain) washers?\b|\bwashers?, (flat|plain)\b|^fw\b/, "flat washer"],
  [/\bhex(agon)?( head)? (bolts?|cap screws?)\b|\bbolts?, hex\b|^hb\b/, "hex bolt"],
  [/\bhex(agon)? nuts?\b|\bnuts?, hex\b|^hn\b/, "hex nut"],
];

const inchMark = String.raw`(?:\s*(?:"|in\b|inch\b))?`;
const amount = String.raw`\d+[- ]\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+`;

/** `1/4`, `1/4-20`, `1/4-20 x 1-1/4 in`. */
const sizeWords = new RegExp(
  String.raw`(?:^|[\s,(])(\d+\/\d+|\.\d+|\d+\.\d+)${inchMark}(?:\s*-\s*(\d+)(?!\/)\b)?${inchMark}(?:\s*(?:unc|unf))?(?:\s*x\s*(${amount})${inchMark})?`,
);

/** The fastener that any of the texts names, the first before the others; `null` where none does. */
export function readFastener(...texts: readonly string[]): Fastener | null {
  const plain = texts.map((text) => text.toLowerCase().replaceAll("×", "x").trim());
  const kind = firstKind(plain);
  if (kind === null) return null;
  for (const text of plain) {
    const found = sizeWords.exec(text);
    const written = found?.[1];
    if (found === null || written === undefined) continue;
    const [, , threads, length] = found;
    const diameter = inchesOf(written);
    const size = fastenerSizes.find((known) => known.diameter === diameter) ?? null;
    return {
      kind,
      nominal: size?.nominal ?? written,
      size,
      threads: threads === undefined ? null : Number(threads),
      length: isBolt(kind) && length !== undefined ? inchesOf(length) : null,
    };
  }
  return null;
}

export const isBolt = (kind: FastenerKind): boolean =>
  kind === "carriage bolt" || kind === "hex bolt";

export const isNut = (kind: FastenerKind): boolean => kind === "hex nut" || kind === "flange nut";

function firstKind(texts: readonly string[]): FastenerKind | null {
  for (const text of texts) {
    const found = kindWords.find(([words]) => words.test(text));
    if (found !== undefined) return found[1];
  }
  return null;
}

/** `1-1/4` and `1 1/4` are 1.25. */
function inchesOf(text: string): number {
  const [, whole = "0", top = "0", bottom = "1"] = /^(?:(\d+)[- ])?(\d+)\/(\d+)$/.exec(text) ?? [];
  return text.includes("/") ? Number(whole) + Number(top) / Number(bottom) : Number(text);
}
