/** What the starter book's hinged doors share, single and in pairs. Invented: a firm replaces it. */
import { lockNotCounted } from "./lockLimit";
import { nominalHeights } from "./nominalHeights";
import {
  bases,
  fastened,
  type Connection,
  type StarterLimit,
  type StarterPart,
  type StarterSize,
} from "./starterRows";

const basis = bases.invented;

/** Sizes of one hinged leaf, worked out from `leaf_width` and `height`. */
export const hingedLeafSizes: readonly StarterSize[] = [
  ...nominalHeights,
  {
    name: "hinges",
    formula: 'MAX(2, ROUNDUP(height / 30", 0))',
    unit: "count",
    note: "hinges of one leaf: one for each 30 in of height or part of it, at least two",
    basis,
  },
  {
    name: "jamb_bolts",
    formula: "MAX(2, ROUNDUP(height / 4', 0))",
    unit: "count",
    note: "bolts that hold one jamb: one for each 4 ft or part of it, at least two",
    basis,
  },
];

/** The jamb that a leaf hangs on, its hinges, and the leaf; for one leaf or two. */
export function hingedLeafParts(leaves: 1 | 2): readonly StarterPart[] {
  const hingeSide: Connection = { bag: "Hinge side", step: 10, basis };
  const leaf: Connection = { bag: "Leaf", step: 30, basis };
  const times = (count: number, name: string): string =>
    count === 1 ? name : `${count} * ${name}`;
  return [
    { ...hingeSide, item: "JAMB HINGE", size: "height", quantity: leaves, minutes: 12 * leaves },
    ...fastened(hingeSide, times(leaves, "jamb_bolts"), ["CB 1/4 x 1-1/4", "HN 1/4"], '3/4"'),
    {
      ...leaf,
      item: "PANEL",
      size: "leaf_width x height",
      quantity: leaves,
      minutes: 15 * leaves,
    },
    {
      ...leaf,
      item: "HINGE",
      quantity: times(leaves, "hinges"),
      minutes: times(8 * leaves, "hinges"),
    },
    ...fastened(leaf, times(4 * leaves, "hinges"), ["CB 1/4 x 3/4", "LW 1/4", "HN 1/4"], '1/4"'),
  ];
}

export const hingedLeafLimits: readonly StarterLimit[] = [
  {
    when: "IF(ISBLANK(post_height), FALSE, door_nominal > post_nominal)",
    level: "stop",
    message:
      "The door is {height} high and its posts are {post_height}: a door cannot be taller than its posts.",
    basis,
  },
  {
    when: "OR(leaf_width < 2', leaf_width > 5')",
    level: "stop",
    message: "The leaf is {leaf_width} wide; this book knows hinged leaves from 2 ft to 5 ft.",
    basis,
  },
  {
    when: "height > 10'",
    level: "stop",
    message: "The door is {height} high; this book knows doors up to 10 ft.",
    basis,
  },
  lockNotCounted,
  {
    when: "transom",
    level: "note",
    message:
      "Order of work: put the transom in before the jambs. Its own parts are not counted with the door: list it as a fixed transom.",
    basis,
  },
];
