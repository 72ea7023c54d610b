/**
 * The starter book's sliding door: one leaf that hangs from a track and slides past the line posts.
 *
 * Order of work. The latch side comes first, then brackets, track, leaf, trolleys, stop and floor
 * guide. Where the leaf cannot be loaded from the tail end of the track, the latch side comes after
 * the leaf is in: `latch_step` says which.
 */
import { overheadParts, trackParts, trackPieceSizes, trackSectionLength } from "./hungTrack";
import { leafParts, leafSizes, stopAndGuideParts } from "./slidingLeaf";
import { bases, fastened, type Connection, type StarterType } from "./starterRows";
import { leafRangeLimits, trackLimits, transomFirst } from "./trackLimits";

const { practice, practiceTimed, assumed } = bases;

const latchSide: Connection = { bag: "Latch side", step: "latch_step", basis: practice };
const forOneLeaf = (quantity: string | number) => quantity;

export const slidingDoor: StarterType = {
  type: "Sliding door",
  sizes: [
    {
      name: "leaf_overlap",
      formula: 0,
      unit: "length",
      note: "how much wider the leaf is than the opening; 0 makes the leaf as wide as the opening",
      basis: assumed,
    },
    {
      name: "leaf_width",
      formula: "width + leaf_overlap",
      unit: "length",
      note: "width of the moving door",
      basis: practice,
    },
    ...leafSizes,
    {
      name: "hangers",
      formula: "IF(tail_post, 3, 2)",
      unit: "count",
      note: "posts that carry the track: two at the opening, and one at the tail end where it stands",
      basis: practice,
    },
    {
      name: "track_extra",
      formula: 0,
      unit: "length",
      note: "track beyond twice the leaf; 0 until your supplier's track says otherwise",
      basis: assumed,
    },
    {
      name: "track_length",
      formula: "2 * leaf_width + track_extra",
      unit: "length",
      note: "the leaf closed and the leaf open, side by side",
      basis: assumed,
    },
    trackSectionLength,
    {
      name: "track_sections",
      formula:
        "IF(leaf_width <= 6', 1, IF(leaf_width > 8', 2, ROUNDUP(track_length / track_section_length, 0)))",
      unit: "count",
      note: "one up to 6 ft wide, two above 8 ft; between them by length, as practice is not settled",
      basis: practice,
    },
    ...trackPieceSizes,
    {
      name: "open_run",
      formula: "leaf_width",
      unit: "length",
      note: "tail run that the open leaf takes up",
      basis: assumed,
    },
    {
      name: "loading_run",
      formula: "track_length - width + leaf_width",
      unit: "length",
      note: "tail run for loading the leaf from the tail end: the track beyond the opening, and the leaf",
      basis: assumed,
    },
    {
      name: "tail_run_given",
      formula: "NOT(ISBLANK(tail_run))",
      unit: "yes/no",
      note: "whether the schedule says how long the tail run is",
      basis: assumed,
    },
    {
      name: "jamb_late",
      formula: "IF(tail_run_given, tail_run < loading_run, FALSE)",
      unit: "yes/no",
      note: "whether the leaf is loaded from the latch side, so that jamb and strike follow it",
      basis: practice,
    },
    {
      name: "latch_step",
      formula: "IF(jamb_late, 55, 10)",
      unit: "count",
      note: "step of jamb and strike in the order of work",
      basis: practice,
    },
  ],
  parts: [
    { ...latchSide, item: "JAMB", size: "height", quantity: 1, minutes: 12, basis: practiceTimed },
    ...fastened(latchSide, 2, ["CB 1/4 x 1-1/4", "HN 1/4"], '3/4"'),
    { ...latchSide, item: "STRIKE", quantity: 1, minutes: 6, basis: practiceTimed },
    ...fastened(latchSide, 2, ["CB 1/4 x 1/2", "LW 1/4", "HN 1/4"], '1/8"'),
    ...overheadParts(20),
    ...trackParts,
    ...leafParts(forOneLeaf),
    ...stopAndGuideParts(forOneLeaf),
  ],
  limits: [
    ...leafRangeLimits,
    {
      when: "NOT(tail_post)",
      level: "warn",
      message:
        "There is no post at the tail end of the track, so two hangers are counted. See what carries the track there.",
      basis: practice,
    },
    {
      when: "AND(leaf_width > 6', leaf_width <= 8')",
      level: "note",
      message:
        "Between 6 ft and 8 ft wide practice differs on the track: {track_sections} counted, from {track_length} of track in sections of up to {track_section_length}.",
      basis: practice,
    },
    ...trackLimits,
    {
      when: "IF(tail_run_given, tail_run < open_run, FALSE)",
      level: "warn",
      message: "The tail run is {tail_run}; the leaf needs {open_run} to open fully.",
      basis: assumed,
    },
    transomFirst,
    {
      when: "IF(tail_run_given, NOT(jamb_late), FALSE)",
      level: "note",
      message:
        "Order of work: jamb and strike first; load the leaf into the track from its tail end.",
      basis: practice,
    },
    {
      when: "jamb_late",
      level: "note",
      message:
        "Order of work: loading the leaf from the tail end needs a tail run of {loading_run}. Hang the track first and load the leaf from the latch side; jamb and strike follow.",
      basis: practice,
    },
    {
      when: "NOT(tail_run_given)",
      level: "note",
      message:
        "Order of work: no tail run is given. Load the leaf from the tail end if {loading_run} is free there; otherwise hang the track first, and jamb and strike follow.",
      basis: practice,
    },
  ],
};
