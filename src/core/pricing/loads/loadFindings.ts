/** What can be wrong or unknown about the loads of an opening. */
import type { FindingTable } from "../../base/finding";

const engineer = "Loads and the structure above belong to a licensed engineer.";

export const loadFindings = {
  "trolley-over-capacity": {
    level: "stop",
    says: "The load on {where} is {found}; the capacity entered is {capacity}.",
    todo: `Use trolleys of a higher capacity or a lighter leaf. ${engineer}`,
  },
  "hanger-over-capacity": {
    level: "stop",
    says: "The load on the {where} reaches {found} as the leaf travels; the capacity entered is {capacity}.",
    todo: `Add a hanger, or use one of a higher capacity. ${engineer}`,
  },
  "track-over-capacity": {
    level: "stop",
    says: "The track bends with {found} in the {where}; the capacity entered is {capacity}.",
    todo: `Put the hangers closer, or use a heavier track. ${engineer}`,
  },
  "joint-over-capacity": {
    level: "stop",
    says: "The {where} of the track bends with {found}; the capacity entered is {capacity}.",
    todo: `Move the joint nearer to a hanger. ${engineer}`,
  },
  "deflection-over-capacity": {
    level: "stop",
    says: "The track sinks {found} in the {where}; the limit entered allows {capacity}.",
    todo: `Put the hangers closer, or use a stiffer track. ${engineer}`,
  },
  "leaf-beyond-last-hanger": {
    level: "stop",
    says: "A trolley runs {beyond} past the last hanger, where nothing is known to carry the track.",
    todo: `Give the track a hanger at its end. ${engineer}`,
  },
  "leaf-tips": {
    level: "stop",
    says: "The centre of gravity of leaf {leaf} is not between its trolleys, so one of them would lift.",
    todo: `Set the trolleys on both sides of the middle of the leaf. ${engineer}`,
  },
  "no-capacities": {
    level: "note",
    says: "No hanging load of {job} is checked (openings that hang: {count}): no capacities are entered.",
    todo: `Enter on the rates sheet what your supplier gives. ${engineer}`,
  },
  "loads-not-checked": {
    level: "note",
    says: "Not checked: {kinds}.",
    todo: "Enter the capacities that the supplier gives. Until then nothing says that they suffice.",
  },
  "leaf-weight-not-known": {
    level: "note",
    says: "Loads are not checked: the weight of the leaf or the places of the hangers are not known.",
    todo: "Give a weight to every part of the leaf, and the hangers their places.",
  },
} as const satisfies FindingTable;
