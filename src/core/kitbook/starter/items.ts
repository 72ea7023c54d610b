/**
 * Items that the starter kit book names, with invented costs and weights.
 *
 * Descriptions of fasteners follow the order of ASME B18 designations (name, nominal size and threads,
 * length, material, finish), the everyday name first and the standard's in brackets. Codes are the
 * book's own short names for them.
 */
import { untyped } from "./starterRows";

/** One item as typed: its cells are those that an items sheet would have. */
export type StarterItem = ReturnType<typeof item>;

const basis = "invented starter: cost and weight are made up; replace with your supplier's";
const priceDate = "2026-10-01";

/** Small parts get lost on site: a few more of each go along. */
const fastenerSpares = { sparesPercent: 5, sparesLeast: 2 } as const;
const noSpares = { sparesPercent: 0, sparesLeast: 0 } as const;

/** Code, description, cost and weight of one. */
type Priced = readonly [code: string, description: string, unitCost: number, weight: number];

const zinc = "steel, zinc plated";

const fasteners: readonly Priced[] = [
  ["CB 1/4 x 1/2", `Carriage bolt (round head square neck), 1/4-20 x 1/2 in, ${zinc}`, 0.09, 0.014],
  ["CB 1/4 x 3/4", `Carriage bolt (round head square neck), 1/4-20 x 3/4 in, ${zinc}`, 0.1, 0.017],
  [
    "CB 1/4 x 1-1/4",
    `Carriage bolt (round head square neck), 1/4-20 x 1-1/4 in, ${zinc}`,
    0.12,
    0.023,
  ],
  ["CB 5/16 x 1", `Carriage bolt (round head square neck), 5/16-18 x 1 in, ${zinc}`, 0.19, 0.034],
  [
    "CB 1/2 x 1-1/4",
    `Carriage bolt (round head square neck), 1/2-13 x 1-1/4 in, ${zinc}`,
    0.48,
    0.117,
  ],
  ["HB 1/4 x 3/4", `Hex bolt (hex cap screw), 1/4-20 x 3/4 in, ${zinc}`, 0.11, 0.018],
  ["HB 1/4 x 1-3/4", `Hex bolt (hex cap screw), 1/4-20 x 1-3/4 in, ${zinc}`, 0.16, 0.031],
  ["HN 1/4", `Hex nut, 1/4-20, ${zinc}`, 0.04, 0.007],
  ["HN 5/16", `Hex nut, 5/16-18, ${zinc}`, 0.06, 0.011],
  ["HN 1/2", `Hex nut, 1/2-13, ${zinc}`, 0.17, 0.037],
  ["FN 1/4", `Flange nut (hex flange), 1/4-20, ${zinc}`, 0.07, 0.009],
  ["FN 5/16", `Flange nut (hex flange), 5/16-18, ${zinc}`, 0.1, 0.015],
  ["FW 1/4", `Flat washer (plain, type B regular), 1/4 in, ${zinc}`, 0.03, 0.006],
  ["FW 1/2", `Flat washer (plain, type B regular), 1/2 in, ${zinc}`, 0.1, 0.028],
  ["LW 1/4", `Lock washer (helical spring, regular), 1/4 in, ${zinc}`, 0.02, 0.002],
];

const anchors: readonly Priced[] = [
  ["FA 1/4", `Concrete anchor (expansion), 1/4 x 1-3/4 in, ${zinc}`, 0.62, 0.03],
  ["LS 1/4 x 1-1/2", `Lag screw (hex head), 1/4 x 1-1/2 in, ${zinc}`, 0.14, 0.021],
];

/** `a 7 ft`, `an 8 ft`. */
const aFeet = (feet: string): string => `${feet === "8" ? "an" : "a"} ${feet} ft`;

const brackets: readonly Priced[] = [
  ...[
    ["7-7", 11.4],
    ["8-7", 11.9],
    ["9-7", 12.3],
    ["10-7", 12.8],
    ["12-7", 13.9],
    ["8-8", 11.9],
    ["9-8", 12.3],
    ["10-8", 12.8],
    ["12-8", 13.9],
    ["10-10", 14.6],
    ["12-10", 15.2],
  ].map(([pair, cost]): Priced => {
    const [post = "", door = ""] = String(pair).split("-");
    return [
      `PLATE ${post}-${door}`,
      `Track plate, for ${aFeet(post)} post and ${aFeet(door)} door, steel, painted`,
      Number(cost),
      3.2,
    ];
  }),
  ["CLAMP TRACK", "Track clamp, for one hanger, steel, painted", 4.85, 0.9],
  ["CLAMP PANEL", "Panel clamp, one half of a set, steel, painted", 1.35, 0.25],
  ["BRACKET", `Angle bracket, 1-1/2 x 1-1/2 in, ${zinc}`, 0.95, 0.22],
  ["CORNER", "Frame corner, for a service window, steel, painted", 1.6, 0.3],
  ["BRACKET SHELF", "Shelf bracket, steel, painted", 4.2, 1.1],
];

const doorParts: readonly Priced[] = [
  ["STRIKE", "Strike, for a sliding or hinged door, steel, painted", 7.5, 0.8],
  ["JAMB", "Jamb, steel channel, painted, in the height of the door", 31.5, 11],
  ["JAMB HINGE", "Jamb, hinge side, steel channel, painted, in the height of the door", 34, 12],
  ["STILE", "Tail stile, steel channel, painted, in the height of the leaf", 24, 8.5],
  ["STILE MEETING", "Meeting stile, steel channel, painted, in the height of the leaf", 26, 9],
  ["SPACER", "Spacer, for the channel of a tail stile, steel", 0.55, 0.12],
  ["TROLLEY", "Trolley, four wheels, with 1/2-13 hanger bolt", 18.75, 2.4],
  ["HINGE", "Hinge, weldless, with fixed pin, steel, painted", 6.9, 1.3],
  ["LATCH", "Latch, for a hinged door, steel, zinc plated", 22.5, 1.8],
  ["ASTRAGAL", "Astragal, steel flat, painted, in the height of the door", 14, 5],
  ["BOLT HEAD", "Surface bolt, at the head of an inactive leaf, steel, zinc plated", 9.8, 1],
  ["BOLT FOOT", "Surface bolt, at the foot of an inactive leaf, steel, zinc plated", 11.2, 1.3],
  ["STRIKE FLOOR", "Floor strike, for a foot bolt, steel, zinc plated", 5.4, 0.6],
  ["STOP CENTER", "Floor stop, at the middle of a bi-parting door, steel, painted", 8.6, 1.1],
  ["HASP", "Hasp and staple, for a service window, steel, zinc plated", 6.3, 0.7],
];

/** Priced and weighed by the foot. */
const cutFromStock: readonly (readonly [...Priced, family: string])[] = [
  ["TRACK", "Track, box section for a four-wheel trolley, steel, galvanized", 5.6, 2.6, "Track"],
  ["SPLICE", "Splice channel, over the panels of a leaf, steel, painted", 2.3, 1.1, "Leaf"],
  ["ANGLE", "Bottom angle, of a leaf of two panels, steel, painted", 1.9, 1.2, "Leaf"],
  ["GUIDE", "Floor guide channel, steel, galvanized", 2.8, 1.4, "Floor guide"],
  ["FRAME WINDOW", "Frame angle, of a service window, steel, painted", 2.1, 1.2, "Window"],
  ["GUIDE SASH", "Sash guide channel, of a service window, steel, painted", 2.4, 1, "Window"],
  ["SHELF", "Shelf, 12 in deep, of a service window, steel, painted", 9.5, 4.8, "Window"],
];

const families: Readonly<Partial<Record<string, string>>> = {
  STRIKE: "Frame",
  JAMB: "Frame",
  "JAMB HINGE": "Frame",
  "STRIKE FLOOR": "Frame",
  TROLLEY: "Track",
  "STOP CENTER": "Floor guide",
  BRACKET: "Floor guide",
  CORNER: "Window",
  "BRACKET SHELF": "Window",
  HASP: "Window",
};

type Spares = { readonly sparesPercent: number; readonly sparesLeast: number };

const item = (
  [code, description, unitCost, weight]: Priced,
  family: string,
  unit: string,
  { sparesPercent, sparesLeast }: Spares,
) =>
  ({
    code: untyped(code),
    description: untyped(description),
    family: untyped(families[code] ?? family),
    unit: untyped(unit),
    unitCost: untyped(unitCost),
    weight: untyped(weight),
    sparesPercent: untyped(sparesPercent),
    sparesLeast: untyped(sparesLeast),
    priceDate: untyped(priceDate),
    basis: untyped(basis),
  }) as const;

/** Every item that the starter kit book can name, and no other. */
export const starterItems: readonly StarterItem[] = [
  ...fasteners.map((row) => item(row, "Fasteners", "each", fastenerSpares)),
  ...anchors.map((row) => item(row, "Anchors", "each", fastenerSpares)),
  ...brackets.map((row) => item(row, "Brackets and clamps", "each", noSpares)),
  ...doorParts.map((row) => item(row, "Leaf", "each", noSpares)),
  item(
    ["PANEL", "Panel, woven wire mesh in a steel frame, painted", 6.4, 1.45],
    "Leaf",
    "square foot",
    noSpares,
  ),
  ...cutFromStock.map(([code, description, cost, weight, family]) =>
    item([code, description, cost, weight], family, "foot", noSpares),
  ),
];
