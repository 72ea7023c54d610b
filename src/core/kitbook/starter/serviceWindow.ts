/**
 * The starter book's service window: a framed hole in the partition with a sash that slides up, and a
 * shelf. Width and height are those of the hole. Invented: a firm replaces it.
 */
import { lockNotCounted } from "./lockLimit";
import { allInvented, bases, fastened, type Connection, type StarterType } from "./starterRows";

const basis = bases.invented;
const frame: Connection = { bag: "Frame", step: 10, basis };
const sash: Connection = { bag: "Sash", step: 20, basis };
const shelf: Connection = { bag: "Shelf", step: 30, basis };

export const serviceWindow: StarterType = allInvented({
  type: "Service window",
  sizes: [
    {
      name: "guide_length",
      formula: "2 * height",
      unit: "length",
      note: "length of one sash guide: the sash shut and the sash open",
      basis,
    },
    {
      name: "guide_bolts",
      formula: 'MAX(2, ROUNDUP(guide_length / 24", 0))',
      unit: "count",
      note: "bolts of one sash guide: one for each 24 in or part of it, at least two",
      basis,
    },
    {
      name: "shelf_brackets",
      formula: "IF(width <= 4', 2, 3)",
      unit: "count",
      note: "brackets under the shelf",
      basis,
    },
  ],
  parts: [
    { ...frame, item: "FRAME WINDOW", quantity: 2, cutLength: "width", minutes: 10 },
    { ...frame, item: "FRAME WINDOW", quantity: 2, cutLength: "height", minutes: 10 },
    { ...frame, item: "CORNER", quantity: 4, minutes: 12 },
    ...fastened(frame, 8, ["CB 1/4 x 3/4", "LW 1/4", "HN 1/4"], '1/4"'),
    { ...sash, item: "GUIDE SASH", quantity: 2, cutLength: "guide_length", minutes: 20 },
    ...fastened(sash, "2 * guide_bolts", ["CB 1/4 x 3/4", "HN 1/4"], '1/4"'),
    { ...sash, item: "PANEL", size: "width x height", quantity: 1, minutes: 10 },
    { ...sash, item: "HASP", quantity: 1, minutes: 8 },
    ...fastened(sash, 2, ["CB 1/4 x 3/4", "LW 1/4", "HN 1/4"], '1/4"'),
    { ...shelf, item: "SHELF", size: "width", quantity: 1, minutes: 10 },
    { ...shelf, item: "BRACKET SHELF", quantity: "shelf_brackets", minutes: "5 * shelf_brackets" },
    ...fastened(
      shelf,
      "2 * shelf_brackets",
      ["HB 1/4 x 3/4", "FW 1/4", "LW 1/4", "HN 1/4"],
      '1/4"',
    ),
  ],
  limits: [
    {
      when: "OR(width < 1', ROUND(width * 16, 0) / 16 > 6')",
      level: "stop",
      message: "The window is {width} wide; this book knows windows from 1 ft to 6 ft.",
      basis,
    },
    {
      when: "OR(height < 1', height > 5')",
      level: "stop",
      message: "The window is {height} high; this book knows windows from 1 ft to 5 ft.",
      basis,
    },
    {
      when: "IF(ISBLANK(post_height), FALSE, guide_length > post_height)",
      level: "warn",
      message:
        "The sash guides are {guide_length} long and the posts {post_height} high: see whether the sash can open.",
      basis,
    },
    lockNotCounted,
  ],
});
