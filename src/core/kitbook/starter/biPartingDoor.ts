/**
 * The starter book's bi-parting sliding door: two leaves of half the width that meet in the middle and
 * slide apart. Each leaf has the hardware of a sliding door's leaf. Invented: a firm replaces it.
 */
import { overheadParts, trackParts, trackPieceSizes, trackSectionLength } from "./hungTrack";
import { leafParts, leafSizes, stopAndGuideParts } from "./slidingLeaf";
import { allInvented, bases, fastened, type Connection, type StarterType } from "./starterRows";
import { leafRangeLimits, trackLimits, transomFirst } from "./trackLimits";

const basis = bases.invented;
const meeting: Connection = { bag: "Meeting edges", step: 46, basis };
const centerStop: Connection = { bag: "Floor guide", step: 72, basis };

/** `panels` becomes `2 * panels`, and `2 * clamp_sets` becomes `4 * clamp_sets`. */
function forBothLeaves(quantity: string | number): string | number {
  if (typeof quantity === "number") return 2 * quantity;
  const [, count = "1", rest = quantity] = /^(\d+) \* (\w+)$/.exec(quantity) ?? [];
  return `${2 * Number(count)} * ${rest}`;
}

export const biPartingDoor: StarterType = allInvented({
  type: "Bi-parting sliding door",
  sizes: [
    {
      name: "leaf_overlap",
      formula: 0,
      unit: "length",
      note: "how much wider one leaf is than half the opening",
      basis,
    },
    {
      name: "leaf_width",
      formula: "width / 2 + leaf_overlap",
      unit: "length",
      note: "width of one leaf",
      basis,
    },
    ...leafSizes,
    {
      name: "hangers",
      formula: "IF(tail_post, 4, 2)",
      unit: "count",
      note: "posts that carry the track: two at the opening, and one at each end where they stand",
      basis,
    },
    {
      name: "track_extra",
      formula: 0,
      unit: "length",
      note: "track beyond the opening and the two open leaves",
      basis,
    },
    {
      name: "track_length",
      formula: "width + 2 * leaf_width + track_extra",
      unit: "length",
      note: "the opening, and the open leaf on each side of it",
      basis,
    },
    trackSectionLength,
    {
      name: "track_sections",
      formula: "ROUNDUP(track_length / track_section_length, 0)",
      unit: "count",
      note: "sections of equal length",
      basis,
    },
    ...trackPieceSizes,
    {
      name: "open_run",
      formula: "leaf_width",
      unit: "length",
      note: "free run that each open leaf takes up on its own side",
      basis,
    },
  ],
  parts: [
    ...overheadParts(10),
    ...trackParts,
    ...leafParts(forBothLeaves),
    { ...meeting, item: "STILE MEETING", size: "panel_height", quantity: 2, minutes: 16 },
    ...fastened(meeting, 6, ["HB 1/4 x 1-3/4", "HN 1/4"], '1 1/4"'),
    { ...meeting, item: "STRIKE", quantity: 2, minutes: 12 },
    ...fastened(meeting, 4, ["CB 1/4 x 1/2", "LW 1/4", "HN 1/4"], '1/8"'),
    ...stopAndGuideParts(forBothLeaves),
    { ...centerStop, item: "STOP CENTER", quantity: 1, minutes: 8 },
    { ...centerStop, item: "=floor_anchor", quantity: 2, when: 'floor_anchor <> ""', minutes: 10 },
  ],
  limits: [
    ...leafRangeLimits,
    {
      when: "NOT(tail_post)",
      level: "warn",
      message:
        "There are no posts at the ends of the track, so two hangers are counted. See what carries the track there.",
      basis,
    },
    ...trackLimits,
    {
      when: "IF(ISBLANK(tail_run), FALSE, tail_run < open_run)",
      level: "warn",
      message: "The tail run is {tail_run}; each leaf needs {open_run} on its side to open fully.",
      basis,
    },
    transomFirst,
    {
      when: "TRUE",
      level: "note",
      message:
        "Order of work: hang the whole track, load each leaf from its own end of it, then set the meeting edges.",
      basis,
    },
  ],
});
