/**
 * A door on hinges: one leaf, or a pair that latches in the middle. For a right hand the hinges are
 * on the right; of a pair the right leaf is the active one.
 */
import { panelsHeight, type Doorway } from "./doorway";
import type { Measure, Shape } from "./elevation";
import {
  around,
  box,
  boxAt,
  groupsOf,
  lengthOf,
  line,
  measure,
  postsAround,
  spread,
  symbols,
  type Layout,
} from "./layout";

type Leaf = { readonly left: number; readonly right: number; readonly hinges: "left" | "right" };

export function hingedDoor(doorway: Doorway): Layout {
  const { width, height, postHeight } = doorway;
  const panels = doorway.pieces("panel");
  const leaves = leavesOf(doorway);
  const leafHeight = panelsHeight(panels) || height;
  const isPair = leaves.length > 1;
  const meeting = isPair ? (leaves[1]?.left ?? 0) : 0;
  const handle = Math.min(symbols.handleHeight, leafHeight / 2);
  return {
    around: surroundings(doorway, leaves, leafHeight),
    measures: [
      measure("below", 0, 0, width, "width"),
      ...leafMeasures(leaves),
      measure("left", 0, 0, height, "height"),
      ...(postHeight === null ? [] : [measure("left", 1, 0, postHeight, "post height")]),
    ],
    placers: {
      panel: (pieces) =>
        groupsOf(pieces, leaves.length).flatMap((ofLeaf, index) => {
          const { left = 0, right = width } = leaves[index] ?? {};
          return ofLeaf.map(({ size: [leafWidth, panelHeight] }) => [
            box(left, 0, leafWidth ?? right - left, panelHeight ?? height),
          ]);
        }),
      hingeJamb: (pieces) =>
        pieces.map((piece, index) => {
          const isLeft = index % 2 === (isPair ? 0 : 1);
          const x = isLeft ? -symbols.jamb : width;
          return [box(x, 0, symbols.jamb, lengthOf(piece, height))];
        }),
      jamb: (pieces) =>
        pieces.map((piece, index) => {
          const x = index % 2 === 0 ? -symbols.jamb : width;
          return [box(x, 0, symbols.jamb, lengthOf(piece, height))];
        }),
      hinge: (pieces) =>
        groupsOf(pieces, leaves.length).flatMap((ofLeaf, index) => {
          const leaf = leaves[index];
          const x = leaf === undefined ? width : leaf[leaf.hinges];
          return spread(ofLeaf.length, 0, leafHeight).map((y) => [boxAt({ x, y }, 3, 4)]);
        }),
      latch: (pieces) =>
        pieces.map((_, index) => [boxAt({ x: meeting + 3, y: handle + 8 * index }, 4, 5)]),
      strike: (pieces) =>
        pieces.map((_, index) => [boxAt({ x: meeting - 0.875, y: handle + 8 * index }, 1.5, 6)]),
      astragal: (pieces) =>
        pieces.map((piece, index) => [
          box(meeting - 0.75 + 1.5 * index, 0, 1.5, lengthOf(piece, height)),
        ]),
      headBolt: (pieces) =>
        pieces.map((_, index) => [
          boxAt({ x: meeting - 4 - 3 * index, y: leafHeight - 4 }, 1.5, 8),
        ]),
      footBolt: (pieces) =>
        pieces.map((_, index) => [boxAt({ x: meeting - 4 - 3 * index, y: 4.5 }, 1.5, 8)]),
      floorStrike: (pieces) =>
        pieces.map((_, index) => [boxAt({ x: meeting - 4 - 3 * index, y: 0 }, 3, 1)]),
    },
  };
}

/** One leaf for each panel, up to two; a single one fills the opening. */
function leavesOf(doorway: Doorway): readonly Leaf[] {
  const { width } = doorway;
  const [first, second] = doorway.pieces("panel");
  if (first === undefined || second === undefined) {
    return [{ left: 0, right: first?.size[0] ?? width, hinges: "right" }];
  }
  const left = lengthOf(first, width / 2);
  return [
    { left: 0, right: left, hinges: "left" },
    { left, right: left + lengthOf(second, width / 2), hinges: "right" },
  ];
}

/** The leaves of a pair; one says it for both where they are as wide as each other. */
function leafMeasures(leaves: readonly Leaf[]): readonly Measure[] {
  if (leaves.length < 2) return [];
  const widths = new Set(leaves.map(({ left, right }) => right - left));
  return leaves
    .slice(0, widths.size)
    .map(({ left, right }) => measure("below", 1, left, right, "leaf"));
}

/** Dashed lines run to the hinge side, as elevations show which side hangs. */
function surroundings(
  { width, height, postHeight, hasTransom, transomHeight }: Doorway,
  leaves: readonly Leaf[],
  leafHeight: number,
): readonly Shape[] {
  const posts = postHeight ?? height + 4;
  const top = transomHeight === null ? posts : height + transomHeight;
  return [
    around("floor", line(-symbols.post - 10, 0, width + symbols.post + 10, 0)),
    ...postsAround(width, posts),
    ...(hasTransom && top > height ? [around("transom", box(0, height, width, top - height))] : []),
    ...leaves.flatMap((leaf) => {
      const hinge = leaf[leaf.hinges];
      const latch = leaf[leaf.hinges === "right" ? "left" : "right"];
      return [0, leafHeight].map((y) => around("swing", line(latch, y, hinge, leafHeight / 2)));
    }),
  ];
}
