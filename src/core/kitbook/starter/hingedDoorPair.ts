/**
 * The starter book's pair of hinged doors: an active leaf that latches to an inactive one, which is
 * bolted at head and floor. Invented: a firm replaces it.
 */
import { floorAnchorLimit, floorAnchorSize } from "./floorAnchors";
import { hingedLeafLimits, hingedLeafParts, hingedLeafSizes } from "./hingedLeaf";
import { allInvented, bases, fastened, type Connection, type StarterType } from "./starterRows";

const basis = bases.invented;
const meeting: Connection = { bag: "Meeting edges", step: 40, basis };
const footBolt: Connection = { bag: "Floor bolt", step: 50, basis };

export const hingedDoorPair: StarterType = allInvented({
  type: "Hinged door pair",
  sizes: [
    {
      name: "leaf_width",
      formula: "width / 2",
      unit: "length",
      note: "width of one leaf",
      basis,
    },
    ...hingedLeafSizes,
    floorAnchorSize,
  ],
  parts: [
    ...hingedLeafParts(2),
    { ...meeting, item: "ASTRAGAL", size: "height", quantity: 1, minutes: 10 },
    ...fastened(meeting, "2 * jamb_bolts", ["HB 1/4 x 3/4", "FW 1/4", "LW 1/4", "HN 1/4"], '1/4"'),
    { ...meeting, item: "LATCH", quantity: 1, minutes: 10 },
    ...fastened(meeting, 2, ["HB 1/4 x 1-3/4", "LW 1/4", "HN 1/4"], '1 1/4"'),
    { ...meeting, item: "STRIKE", quantity: 1, minutes: 6 },
    ...fastened(meeting, 2, ["CB 1/4 x 1/2", "LW 1/4", "HN 1/4"], '1/8"'),
    { ...meeting, item: "BOLT HEAD", quantity: 1, minutes: 10 },
    ...fastened(meeting, 2, ["CB 1/4 x 3/4", "LW 1/4", "HN 1/4"], '1/4"'),
    { ...footBolt, item: "BOLT FOOT", quantity: 1, minutes: 10 },
    ...fastened(footBolt, 2, ["CB 1/4 x 3/4", "LW 1/4", "HN 1/4"], '1/4"'),
    { ...footBolt, item: "STRIKE FLOOR", quantity: 1, minutes: 6 },
    { ...footBolt, item: "=floor_anchor", quantity: 2, when: 'floor_anchor <> ""', minutes: 10 },
  ],
  limits: [...hingedLeafLimits, floorAnchorLimit],
});
