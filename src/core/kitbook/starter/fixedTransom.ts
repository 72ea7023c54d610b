/**
 * The starter book's fixed transom: mesh panels above an opening, bolted to the posts on both sides.
 * Invented: a firm replaces it.
 */
import { allInvented, bases, fastened, type Connection, type StarterType } from "./starterRows";

const basis = bases.invented;
const transom: Connection = { bag: "Transom", step: 10, basis };
const joint: Connection = { bag: "Transom", step: 12, when: "panels > 1", basis };

export const fixedTransom: StarterType = allInvented({
  type: "Fixed transom",
  sizes: [
    {
      name: "panel_height",
      formula: "IF(ISBLANK(transom_height), height, transom_height)",
      unit: "length",
      note: "the transom height where it is given, else the height",
      basis,
    },
    {
      name: "panels",
      formula: "MAX(1, ROUNDUP(width / 10', 0))",
      unit: "count",
      note: "panels of equal width, each up to 10 ft",
      basis,
    },
    {
      name: "panel_width",
      formula: "width / panels",
      unit: "length",
      note: "width of one panel",
      basis,
    },
    {
      name: "side_bolts",
      formula: "MAX(2, ROUNDUP(panel_height / 2', 0))",
      unit: "count",
      note: "bolts to the post on one side: one for each 2 ft or part of it, at least two",
      basis,
    },
    {
      name: "clamp_sets",
      formula: "2 * (panels - 1)",
      unit: "count",
      note: "sets of clamps: two at each joint of panels",
      basis,
    },
  ],
  parts: [
    {
      ...transom,
      item: "PANEL",
      size: "panel_width x panel_height",
      quantity: "panels",
      minutes: "15 * panels",
    },
    ...fastened(transom, "2 * side_bolts", ["CB 1/4 x 1-1/4", "HN 1/4"], '3/4"'),
    { ...joint, item: "CLAMP PANEL", quantity: "2 * clamp_sets", minutes: "5 * clamp_sets" },
    ...fastened(joint, "2 * clamp_sets", ["CB 1/4 x 1-1/4", "FN 1/4"], '3/4"'),
  ],
  limits: [
    {
      when: "OR(width < 2', width > 20')",
      level: "stop",
      message: "The transom is {width} wide; this book knows transoms from 2 ft to 20 ft.",
      basis,
    },
    {
      when: "OR(panel_height < 6\", panel_height > 5')",
      level: "stop",
      message: "The transom is {panel_height} high; this book knows transoms from 6 in to 5 ft.",
      basis,
    },
    {
      when: "TRUE",
      level: "note",
      message: "Order of work: the transom goes in before the track plates or jambs below it.",
      basis,
    },
  ],
});
