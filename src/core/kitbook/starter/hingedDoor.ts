/** The starter book's hinged door with one leaf between two posts. Invented: a firm replaces it. */
import { hingedLeafLimits, hingedLeafParts, hingedLeafSizes } from "./hingedLeaf";
import { allInvented, bases, fastened, type Connection, type StarterType } from "./starterRows";

const basis = bases.invented;
const latchSide: Connection = { bag: "Latch side", step: 20, basis };
const latch: Connection = { bag: "Latch", step: 40, basis };

export const hingedDoor: StarterType = allInvented({
  type: "Hinged door",
  sizes: [
    {
      name: "leaf_width",
      formula: "width",
      unit: "length",
      note: "width of the leaf",
      basis,
    },
    ...hingedLeafSizes,
  ],
  parts: [
    ...hingedLeafParts(1),
    { ...latchSide, item: "JAMB", size: "height", quantity: 1, minutes: 12 },
    ...fastened(latchSide, "jamb_bolts", ["CB 1/4 x 1-1/4", "HN 1/4"], '3/4"'),
    { ...latchSide, item: "STRIKE", quantity: 1, minutes: 6 },
    ...fastened(latchSide, 2, ["CB 1/4 x 1/2", "LW 1/4", "HN 1/4"], '1/8"'),
    { ...latch, item: "LATCH", quantity: 1, minutes: 10 },
    ...fastened(latch, 2, ["HB 1/4 x 1-3/4", "LW 1/4", "HN 1/4"], '1 1/4"'),
  ],
  limits: hingedLeafLimits,
});
