/**
 * What a firm enters for the checks of hanging loads: capacities from its supplier, and what a leaf
 * weighs and a track is made of where its items do not say. All are blank in the starter, since a
 * made-up capacity would be worse than none.
 */
import type { RateRow } from "../rates/rateRow";

const supplier = "from your supplier; blank is not checked";

export const loadRateRows = [
  {
    key: "trolleyCarries",
    label: "One trolley carries",
    unit: "lb",
    kind: "number",
    starter: "",
    says: supplier,
  },
  {
    key: "hangerCarries",
    label: "One hanger carries",
    unit: "lb",
    kind: "number",
    starter: "",
    says: `with its plate, clamp and bolts; ${supplier}`,
  },
  {
    key: "trackBends",
    label: "The track takes in bending",
    unit: "in-lb",
    kind: "number",
    starter: "",
    says: supplier,
    most: 10_000_000,
  },
  {
    key: "jointBends",
    label: "A track joint takes in bending",
    unit: "in-lb",
    kind: "number",
    starter: "",
    says: supplier,
    most: 10_000_000,
  },
  {
    key: "sinksOver",
    label: "The track may sink by its span over",
    unit: "",
    kind: "number",
    starter: "",
    says: `such as 360; ${supplier}`,
  },
  {
    key: "trackInertia",
    label: "Moment of inertia of the track",
    unit: "in^4",
    kind: "number",
    starter: "",
    says: "about the axis that it bends about; blank leaves the sinking out",
    most: 1000,
  },
  {
    key: "trackWeight",
    label: "The track itself weighs",
    unit: "lb per foot",
    kind: "number",
    starter: "",
    says: "blank: as the items say",
    most: 1000,
  },
  {
    key: "jolt",
    label: "Loads of a moving leaf count",
    unit: "times",
    kind: "number",
    starter: "",
    says: "for jolts; blank is once, as for a leaf that hangs still",
    most: 10,
  },
  {
    key: "trolleyFromEdge",
    label: "A trolley stands from the edge of the leaf",
    unit: "in",
    kind: "number",
    starter: "",
    says: "blank: a quarter of the leaf (common practice, no source)",
    most: 600,
  },
  {
    key: "meshOpening",
    label: "Mesh of the leaf, clear opening",
    unit: "in",
    kind: "number",
    starter: "",
    says: "with the wire, weighs panels by ISO 9044; blank: as the items say",
    most: 12,
  },
  {
    key: "meshWire",
    label: "Mesh of the leaf, wire",
    unit: "in",
    kind: "number",
    starter: "",
    says: "diameter",
    most: 2,
  },
  {
    key: "frameWeight",
    label: "Frame of a panel weighs",
    unit: "lb per foot",
    kind: "number",
    starter: "",
    says: "all around; used with the mesh",
    most: 100,
  },
] as const satisfies readonly RateRow[];
