/** Anchors for what stands on a floor: the item follows the floor. Shared by several opening types. */
import { bases, type StarterLimit, type StarterSize } from "./starterRows";

/** The item's code as a size, empty where the floor says neither concrete nor wood. */
export const floorAnchorSize: StarterSize = {
  name: "floor_anchor",
  formula:
    'IF(OR(floor = "concrete", floor = "conc", floor = "slab", floor = "conc slab", floor = "concrete slab"), "FA 1/4", IF(OR(floor = "wood", floor = "timber", floor = "plywood", floor = "wood deck"), "LS 1/4 x 1-1/2", ""))',
  unit: "text",
  note: "the anchor's item by floor; nothing where the floor is not known",
  basis: bases.assumed,
};

export const floorAnchorLimit: StarterLimit = {
  when: 'floor_anchor = ""',
  level: "warn",
  message:
    'The floor is "{floor}", which is neither concrete nor wood: no floor anchors are counted. Choose anchors for this floor and add them.',
  basis: bases.assumed,
};
