/**
 * What every leaf that hangs from a track needs: its panels, tail stile, trolleys and floor guide.
 *
 * The sliding door has one such leaf and the bi-parting sliding door two, so the rows are made for
 * a number of leaves. The kit book itself has plain rows for each opening type.
 */
import { floorAnchorSize } from "./floorAnchors";
import { nominalHeights } from "./nominalHeights";
import {
  bases,
  fastened,
  type Connection,
  type StarterPart,
  type StarterSize,
} from "./starterRows";

const { practice, practiceTimed, assumed, invented } = bases;

/** Sizes of one leaf, worked out from `leaf_width` and `height`, and of its floor guide. */
export const leafSizes: readonly StarterSize[] = [
  ...nominalHeights,
  {
    name: "panels",
    formula: "IF(leaf_width <= 5', 1, 2)",
    unit: "count",
    note: "panels of one leaf: one up to and including 5 ft wide, two where it is wider",
    basis: practice,
  },
  {
    name: "panel_width",
    formula: "leaf_width / panels",
    unit: "length",
    note: "two panels are half the leaf each",
    basis: practice,
  },
  {
    name: "panel_height",
    formula: "height",
    unit: "length",
    note: "panels as high as the door",
    basis: assumed,
  },
  {
    name: "clamp_sets",
    formula: "IF(panels = 1, 0, IF(panel_height <= 8', 3, 4))",
    unit: "count",
    note: "sets of clamps that join two panels: 3 up to 8 ft high, 4 up to 10 ft",
    basis: practice,
  },
  {
    name: "guide_lap",
    formula: '1"',
    unit: "length",
    note: "how far the tail of the closed leaf stands inside the floor guide: at least 1 in",
    basis: practice,
  },
  {
    name: "guide_length",
    formula: '12"',
    unit: "length",
    note: "length of the floor guide channel",
    basis: invented,
  },
  {
    name: "guide_start",
    formula: "leaf_width - guide_lap",
    unit: "length",
    note: "from the latch edge of the closed leaf to the near end of the floor guide",
    basis: practice,
  },
  floorAnchorSize,
];

/** Makes a quantity for one leaf into one for all of an opening's leaves. */
type ForAllLeaves = (forOne: string | number) => string | number;

/** The parts of the leaf: panels, how two of them are joined, tail stile, trolleys. */
export function leafParts(all: ForAllLeaves): readonly StarterPart[] {
  const leaf: Connection = { bag: "Leaf", step: 40, basis: practice };
  const joined: Connection = { ...leaf, step: 42, when: "panels > 1" };
  const stile: Connection = { ...leaf, step: 44 };
  const trolleys: Connection = { bag: "Trolleys", step: 50, basis: practice };
  return [
    {
      ...leaf,
      item: "PANEL",
      size: "panel_width x panel_height",
      quantity: all("panels"),
      minutes: all("10 * panels"),
      basis: practiceTimed,
    },
    {
      ...joined,
      item: "CLAMP PANEL",
      quantity: all("2 * clamp_sets"),
      minutes: all("5 * clamp_sets"),
      basis: practiceTimed,
    },
    ...fastened(joined, all("2 * clamp_sets"), ["CB 1/4 x 1-1/4", "FN 1/4"], '3/4"'),
    {
      ...joined,
      item: "SPLICE",
      quantity: all(1),
      cutLength: "leaf_width",
      minutes: all(8),
      basis: practiceTimed,
    },
    ...fastened(joined, all("panels"), ["CB 1/4 x 1-1/4", "FW 1/4", "HN 1/4"], '3/4"'),
    {
      ...joined,
      item: "ANGLE",
      quantity: all(1),
      cutLength: "leaf_width",
      minutes: all(8),
      basis: practiceTimed,
    },
    ...fastened(joined, all(4), ["CB 1/4 x 1-1/4", "HN 1/4"], '3/4"'),
    {
      ...stile,
      item: "STILE",
      size: "panel_height",
      quantity: all(1),
      minutes: all(8),
      basis: practiceTimed,
    },
    ...fastened(stile, all(3), ["HB 1/4 x 1-3/4", "HN 1/4"], '1 1/4"'),
    { ...stile, item: "SPACER", quantity: all(4) },
    { ...trolleys, item: "TROLLEY", quantity: all(2), minutes: all(15), basis: practiceTimed },
    ...fastened(trolleys, all(2), ["HN 1/2"]),
  ];
}

/** What stops the leaf at the end of the track, and what guides it at the floor. */
export function stopAndGuideParts(all: ForAllLeaves): readonly StarterPart[] {
  const trackStop: Connection = { bag: "Track stop", step: 60, basis: practice };
  const guide: Connection = { bag: "Floor guide", step: 70, basis: practice };
  return [
    ...fastened(trackStop, all(1), ["CB 1/2 x 1-1/4", "FW 1/2", "HN 1/2"], '3/8"'),
    {
      ...guide,
      item: "GUIDE",
      quantity: all(1),
      cutLength: "guide_length",
      minutes: all(10),
      basis: practiceTimed,
    },
    { ...guide, item: "BRACKET", quantity: all(2) },
    ...fastened(guide, all(2), ["CB 5/16 x 1", "FN 5/16"], '1/4"'),
    {
      ...guide,
      item: "=floor_anchor",
      quantity: all(2),
      when: 'floor_anchor <> ""',
      minutes: all(10),
      basis: bases.assumedTimed,
    },
  ];
}
