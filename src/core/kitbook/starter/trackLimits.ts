/** Limits that a sliding door and a bi-parting sliding door share. */
import { floorAnchorLimit } from "./floorAnchors";
import { lockNotCounted } from "./lockLimit";
import { bases, type StarterLimit } from "./starterRows";

const { practice, assumed } = bases;

/** Sizes that the book cannot count, each a stop. */
export const leafRangeLimits: readonly StarterLimit[] = [
  {
    when: "door_nominal > post_nominal",
    level: "stop",
    message:
      "The door is {height} high and its posts are {post_height}: a door cannot be taller than its posts.",
    basis: practice,
  },
  {
    when: "leaf_width < 2'",
    level: "stop",
    message: "The leaf is {leaf_width} wide; this book knows leaves from 2 ft to 16 ft.",
    basis: practice,
  },
  {
    when: "ROUND(leaf_width * 16, 0) / 16 > 16'",
    level: "stop",
    message: "The leaf is {leaf_width} wide; this book knows leaves from 2 ft to 16 ft.",
    basis: practice,
  },
  {
    when: "height > 10'",
    level: "stop",
    message: "The door is {height} high; this book knows doors up to 10 ft.",
    basis: practice,
  },
];

/** What an estimator has to know of track, guide and floor. */
export const trackLimits: readonly StarterLimit[] = [
  {
    when: "track_piece > track_section_length",
    level: "warn",
    message:
      "Each section of track is {track_piece} long and the longest that you hang is {track_section_length}: count the sections again.",
    basis: assumed,
  },
  {
    when: 'guide_lap < 1"',
    level: "warn",
    message:
      "The tail of the closed leaf stands {guide_lap} inside the floor guide; it needs at least 1 in.",
    basis: practice,
  },
  floorAnchorLimit,
  lockNotCounted,
];

export const transomFirst: StarterLimit = {
  when: "transom",
  level: "note",
  message:
    "Order of work: put the transom in before the track plates. Its own parts are not counted with the door: list it as a fixed transom.",
  basis: practice,
};
