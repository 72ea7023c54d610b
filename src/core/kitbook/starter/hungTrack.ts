/** The track of a sliding or bi-parting door, and what it hangs from. */
import {
  bases,
  fastened,
  type Connection,
  type StarterPart,
  type StarterSize,
} from "./starterRows";

const { practice, practiceTimed, assumed, invented } = bases;

export const trackSectionLength: StarterSize = {
  name: "track_section_length",
  formula: "16'",
  unit: "length",
  note: "the longest section of track that you hang: set it to your own",
  basis: invented,
};

/** Worked out from `track_length` and `track_sections`. */
export const trackPieceSizes: readonly StarterSize[] = [
  {
    name: "track_joints",
    formula: "track_sections - 1",
    unit: "count",
    note: "where two sections of track meet; keep each joint at a hanger",
    basis: assumed,
  },
  {
    name: "track_piece",
    formula: "track_length / track_sections",
    unit: "length",
    note: "length of one section",
    basis: assumed,
  },
];

/** A track plate and a track clamp at each of `hangers`, at that step of the work. */
export function overheadParts(step: number): readonly StarterPart[] {
  const overhead: Connection = { bag: "Overhead", step, basis: practice };
  return [
    {
      ...overhead,
      item: '=CHART("track plate", post_nominal, door_nominal)',
      quantity: "hangers",
      minutes: "6 * hangers",
      basis: practiceTimed,
    },
    ...fastened(overhead, "2 * hangers", ["HB 1/4 x 3/4", "FW 1/4", "LW 1/4", "HN 1/4"], '1/4"'),
    {
      ...overhead,
      item: "CLAMP TRACK",
      quantity: "hangers",
      minutes: "4 * hangers",
      basis: practiceTimed,
    },
    ...fastened(overhead, "hangers", ["CB 5/16 x 1", "HN 5/16"], '1/2"'),
  ];
}

export const trackParts: readonly StarterPart[] = [
  {
    bag: "Track",
    step: 30,
    item: "TRACK",
    quantity: "track_sections",
    cutLength: "track_piece",
    minutes: "20 * track_sections",
    basis: practiceTimed,
  },
];
