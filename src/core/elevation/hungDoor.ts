/**
 * A door that hangs from a track: one leaf that slides to its tail side, or two that part in the
 * middle. The closed leaf is drawn. For a right hand the latch side is on the left.
 */
import { panelsHeight, panelsWidth, type Doorway } from "./doorway";
import type { KitPiece } from "./connections";
import type { Measure, Shape } from "./elevation";
import {
  around,
  box,
  boxAt,
  fromEndToEnd,
  groupsOf,
  lengthOf,
  line,
  measure,
  postsAround,
  spread,
  symbols,
  type Layout,
  type Placer,
} from "./layout";

/** A leaf from `left` to `right`; its tail edge is where it is last when it opens. */
type Leaf = { readonly left: number; readonly right: number; readonly tail: "left" | "right" };

/** All that is worked out once for a hung door, in inches. */
type Hung = {
  readonly doorway: Doorway;
  readonly leaves: readonly Leaf[];
  readonly leafHeight: number;
  readonly trackStart: number;
  readonly trackEnd: number;
  readonly trackFoot: number;
  /** The middle of each post that carries the track, as far as is known. */
  readonly carriers: readonly number[];
};

export function hungDoor(doorway: Doorway): Layout {
  const hung = workOut(doorway);
  return {
    around: surroundings(hung),
    measures: measures(hung),
    placers: { ...overheadPlacers(hung), ...leafPlacers(hung), ...floorPlacers(hung) },
  };
}

function workOut(doorway: Doorway): Hung {
  const { width, height } = doorway;
  const panels = doorway.pieces("panel");
  const all = panelsWidth(panels);
  const named = doorway.size("leaf_width");
  const leafCount =
    doorway.pieces("meetingStile").length > 0 || (named !== null && named > 0 && all > 1.5 * named)
      ? 2
      : 1;
  const leafWidth = named !== null && named > 0 ? named : (all || width) / leafCount;
  const middle = width / 2;
  const leaves: readonly Leaf[] =
    leafCount === 1
      ? [{ left: 0, right: leafWidth, tail: "right" }]
      : [
          { left: middle - leafWidth, right: middle, tail: "left" },
          { left: middle, right: middle + leafWidth, tail: "right" },
        ];
  const leafHeight = panelsHeight(panels) || height;
  const counted = doorway.pieces("track").reduce((sum, piece) => sum + lengthOf(piece, 0), 0);
  const trackLength = counted || 2 * leafWidth * leafCount;
  const trackStart = leafCount === 1 ? 0 : middle - trackLength / 2;
  const trackEnd = trackStart + trackLength;
  const half = symbols.post / 2;
  const carriers =
    leafCount === 1
      ? [-half, width + half, trackEnd - half]
      : [-half, width + half, trackStart + half, trackEnd - half];
  const trackFoot = Math.max(height, leafHeight) + symbols.overLeaf;
  return { doorway, leaves, leafHeight, trackStart, trackEnd, trackFoot, carriers };
}

/** Where a hung door's leaves, hangers and track joints are along its track, closed, for a right hand. */
export type HungPlaces = {
  readonly leaves: readonly Leaf[];
  readonly trackStart: number;
  readonly trackEnd: number;
  /** As many as track plates are counted, or track clamps where there are none. */
  readonly hangers: readonly number[];
  readonly joints: readonly number[];
  /** From the first leaf's trolleys to the last one's; as many as are counted. */
  readonly trolleys: readonly (readonly number[])[];
};

export function hungPlaces(doorway: Doorway): HungPlaces {
  const hung = workOut(doorway);
  const { leaves, trackStart, trackEnd } = hung;
  const hangerCount = doorway.pieces("trackPlate").length || doorway.pieces("trackClamp").length;
  return {
    leaves,
    trackStart,
    trackEnd,
    hangers: hangerCount === 0 ? [] : hangersAt(hung, hangerCount),
    joints: jointsOf(doorway.pieces("track"), trackStart),
    trolleys: groupsOf(doorway.pieces("trolley"), leaves.length).map((ofLeaf, index) =>
      spread(ofLeaf.length, leaves[index]?.left ?? 0, leaves[index]?.right ?? 0),
    ),
  };
}

const isPair = ({ leaves }: Hung): boolean => leaves.length > 1;

function surroundings(hung: Hung): readonly Shape[] {
  const { doorway, leaves, leafHeight, trackStart, trackEnd, trackFoot } = hung;
  const { width, height, hasTailPost, hasTransom } = doorway;
  const posts = doorway.postHeight ?? trackFoot + symbols.track;
  const tails = !hasTailPost
    ? []
    : isPair(hung)
      ? [trackStart, trackEnd - symbols.post]
      : [trackEnd - symbols.post];
  const top = doorway.transomHeight === null ? posts : height + doorway.transomHeight;
  const { end } = tailRunOf(hung);
  const floorEnd = Math.max(trackEnd, width + symbols.post, end ?? 0);
  const joints = jointsOf(doorway.pieces("track"), trackStart);
  return [
    around("floor", line(Math.min(trackStart, -symbols.post) - 6, 0, floorEnd + 6, 0)),
    ...postsAround(width, posts, tails),
    ...(hasTransom && top > height ? [around("transom", box(0, height, width, top - height))] : []),
    ...(end === null ? [] : [around("tail run", line(end, 0, end, Math.min(posts, height)))]),
    ...joints.map((x) => around("joint", line(x, trackFoot - 1, x, trackFoot + symbols.track + 1))),
    ...leaves.map(({ left, right, tail }) => {
      const middle = (left + right) / 2;
      const way = (tail === "right" ? 1 : -1) * Math.min(36, (right - left) / 3);
      const y = leafHeight * 0.62;
      return around("travel", line(middle - way / 2, y, middle + way / 2, y));
    }),
  ];
}

/** Where two sections of track meet. */
function jointsOf(sections: readonly KitPiece[], start: number): readonly number[] {
  let x = start;
  return sections.slice(0, -1).map((section) => (x += lengthOf(section, 0)));
}

/** How far beyond the track a tail run is drawn before it is cut. */
const mostBeyond = 30;

/** Where the tail run ends in the picture; `null` where the schedule gives none. */
function tailRunOf({ doorway, trackEnd }: Hung): { end: number | null; isCut: boolean } {
  const { tailRun, width } = doorway;
  if (tailRun === null) return { end: null, isCut: false };
  const most = Math.max(trackEnd, width) + mostBeyond;
  return { end: Math.min(width + tailRun, most), isCut: width + tailRun > most };
}

function measures(hung: Hung): readonly Measure[] {
  const { doorway, leaves, leafHeight, trackStart, trackEnd } = hung;
  const { width, height, postHeight, tailRun } = doorway;
  const [leaf] = leaves;
  const { end, isCut } = tailRunOf(hung);
  const run = measure("below", 0, width, end ?? width, "tail run");
  const sections = doorway.pieces("track");
  const ends = [trackStart, ...jointsOf(sections, trackStart), trackEnd];
  const isAsWide = leaf?.left === 0 && leaf.right === width;
  return [
    measure("below", 0, 0, width, "width"),
    ...(end === null || tailRun === null
      ? []
      : [isCut ? { ...run, length: measure("below", 0, 0, tailRun, "").length, isCut } : run]),
    ...(isAsWide ? [] : leafMeasures(leaves)),
    ...panelMeasures(hung),
    measure("left", 0, 0, height, "height"),
    ...(leafHeight === height ? [] : [measure("left", 1, 0, leafHeight, "leaf height")]),
    ...(postHeight === null ? [] : [measure("left", 1, 0, postHeight, "post height")]),
    ...(sections.length === 0
      ? []
      : ends.slice(1).map((to, index) => measure("above", 0, ends[index] ?? to, to, "track"))),
    ...(sections.length > 1 ? [measure("above", 1, trackStart, trackEnd, "track in all")] : []),
  ];
}

/** Both leaves of a pair are as wide as each other, so one says it. */
const leafMeasures = ([leaf]: readonly Leaf[]): readonly Measure[] =>
  leaf === undefined ? [] : [measure("below", 1, leaf.left, leaf.right, "leaf")];

/** The panels of a leaf that has more than one; of a second leaf only where they differ. */
function panelMeasures(hung: Hung): readonly Measure[] {
  const [first = [], ...others] = panelBoxes(hung);
  const widths = (boxes: readonly PanelBox[]): string => boxes.map(({ width }) => width).join(" ");
  const differing = others.filter((boxes) => widths(boxes) !== widths(first));
  return [first, ...differing].flatMap((boxes) =>
    boxes.length < 2 ? [] : boxes.map(({ x, width }) => measure("below", 2, x, x + width, "panel")),
  );
}

type PanelBox = { readonly x: number; readonly width: number; readonly height: number };

/** The panels of each leaf, side by side. */
function panelBoxes(hung: Hung): readonly (readonly PanelBox[])[] {
  const { doorway, leaves, leafHeight } = hung;
  return groupsOf(doorway.pieces("panel"), leaves.length).map((panels, index) => {
    const leaf = leaves[index] ?? { left: 0, right: 0 };
    let x = leaf.left;
    return panels.map(({ size: [width, height] }) => {
      const panel = {
        x,
        width: width ?? (leaf.right - leaf.left) / panels.length,
        height: height ?? leafHeight,
      };
      x += panel.width;
      return panel;
    });
  });
}

function overheadPlacers(hung: Hung): Layout["placers"] {
  const { leaves, trackStart, trackEnd, trackFoot } = hung;
  const hangers = (pieces: readonly KitPiece[]): readonly number[] =>
    hangersAt(hung, pieces.length);
  return {
    track: (pieces) => {
      let x = trackStart;
      return pieces.map((piece) => {
        const length = lengthOf(piece, (trackEnd - trackStart) / pieces.length);
        x += length;
        return [box(x - length, trackFoot, length, symbols.track)];
      });
    },
    trackPlate: (pieces) => hangers(pieces).map((x) => [boxAt({ x, y: trackFoot + 2.5 }, 4, 9)]),
    trackClamp: (pieces) =>
      hangers(pieces).map((x) => {
        const inside = Math.min(Math.max(x, trackStart + 1.5), trackEnd - 1.5);
        return [boxAt({ x: inside, y: trackFoot + symbols.track / 2 }, 3, symbols.track + 1.5)];
      }),
    trolley: (pieces) =>
      groupsOf(pieces, leaves.length).flatMap((ofLeaf, index) => {
        const { left = 0, right = 0 } = leaves[index] ?? {};
        return spread(ofLeaf.length, left, right).map((x) => [
          boxAt({ x, y: trackFoot - 0.5 }, 6, 2),
          ...[-2, 2].map((side) => ({
            form: "circle" as const,
            center: { x: x + side, y: trackFoot + 1.4 },
            radius: 1.1,
          })),
          line(x, trackFoot - 1.5, x, trackFoot - symbols.overLeaf),
        ]);
      }),
    trackStop: (pieces) =>
      (pieces.length === 1
        ? [trackEnd - 1.5]
        : fromEndToEnd(pieces.length, trackEnd - 1.5, trackStart + 1.5)
      ).map((x) => [boxAt({ x, y: trackFoot + 0.5 }, 1.5, 5)]),
  };
}

/** Where the hangers are: at the posts that are known, or evenly along the track for another count. */
function hangersAt(hung: Hung, count: number): readonly number[] {
  const { carriers, trackStart, trackEnd, doorway } = hung;
  if (count === 1) return [doorway.width / 2];
  if (count <= carriers.length) return carriers.slice(0, count);
  return fromEndToEnd(count, Math.min(trackStart, -1), trackEnd - 1);
}

function leafPlacers(hung: Hung): Layout["placers"] {
  const { leaves, leafHeight, doorway } = hung;
  /** The pieces of each leaf, placed in it. */
  const inLeaves =
    (placed: (leaf: Leaf, pieces: readonly KitPiece[]) => ReturnType<Placer>): Placer =>
    (pieces) =>
      groupsOf(pieces, leaves.length).flatMap((ofLeaf, index) => {
        const leaf = leaves[index];
        return leaf === undefined ? [] : placed(leaf, ofLeaf);
      });
  /** Upright pieces at an edge, one beside the other. */
  const upright = (isAtTail: boolean): Placer =>
    inLeaves(({ left, right, tail }, pieces) =>
      pieces.map((piece, index) => {
        const isRight = (tail === "right") === isAtTail;
        const x = isRight ? right - symbols.rail * (index + 1) : left + symbols.rail * index;
        return [box(x, 0, symbols.rail, lengthOf(piece, leafHeight))];
      }),
    );
  const along = (foot: number): Placer =>
    inLeaves(({ left, right }, pieces) =>
      pieces.map((piece) => [box(left, foot, lengthOf(piece, right - left), symbols.rail)]),
    );
  return {
    panel: () =>
      panelBoxes(hung).flatMap((boxes) =>
        boxes.map(({ x, width, height }) => [box(x, 0, width, height)]),
      ),
    panelClamp: (pieces) => {
      const boxes = panelBoxes(hung);
      return groupsOf(pieces, leaves.length).flatMap((ofLeaf, index) => {
        const joints = (boxes[index] ?? []).slice(1).map(({ x }) => x);
        const { left = 0, right = 0 } = leaves[index] ?? {};
        return clampsAt(ofLeaf, joints.length > 0 ? joints : [(left + right) / 2], 0, leafHeight);
      });
    },
    splice: along(leafHeight - symbols.rail),
    angle: along(0),
    stile: upright(true),
    meetingStile: upright(false),
    spacer: inLeaves(({ left, right, tail }, pieces) => {
      const x = tail === "right" ? right - symbols.rail / 2 : left + symbols.rail / 2;
      return spread(pieces.length, 0, leafHeight).map((y) => [boxAt({ x, y }, 1.25, 1.25)]);
    }),
    jamb: (pieces) =>
      pieces.map((piece, index) => {
        const x = index % 2 === 0 ? -symbols.jamb : doorway.width;
        return [box(x, 0, symbols.jamb, lengthOf(piece, doorway.height))];
      }),
    strike: (pieces) =>
      pieces.map((_, index) => {
        const y = Math.min(symbols.handleHeight, leafHeight / 2);
        if (!isPair(hung)) return [boxAt({ x: -0.75, y: y + 8 * index }, 1.5, 6)];
        const x = doorway.width / 2 + (index % 2 === 0 ? -0.875 : 0.875);
        return [boxAt({ x, y: y + 8 * Math.floor(index / 2) }, 1.5, 6)];
      }),
  };
}

/**
 * Halves of panel clamps, two to a set, at equal heights along each joint: one half left of the
 * joint and one right of it, though on site they lie face to face.
 */
export function clampsAt(
  pieces: readonly KitPiece[],
  joints: readonly number[],
  foot: number,
  head: number,
): ReturnType<Placer> {
  return groupsOf(pieces, joints.length).flatMap((atJoint, index) => {
    const x = joints[index] ?? 0;
    const heights = spread(Math.ceil(atJoint.length / 2), foot, head);
    return atJoint.map((_, half) => {
      const side = half % 2 === 0 ? -1.125 : 1.125;
      return [boxAt({ x: x + side, y: heights[Math.floor(half / 2)] ?? foot }, 2, 4)];
    });
  });
}

function floorPlacers(hung: Hung): Layout["placers"] {
  const { doorway, leaves } = hung;
  const fromLatch = (leaf: Leaf): number =>
    doorway.size("guide_start") ?? leaf.right - leaf.left - 1;
  /** The floor guide of a leaf, from its near end on. */
  const guideAt = (leaf: Leaf, length: number): number =>
    leaf.tail === "right" ? leaf.left + fromLatch(leaf) : leaf.right - fromLatch(leaf) - length;
  const guides = doorway.pieces("guide");
  const guideOf = (index: number): { readonly x: number; readonly length: number } => {
    const leaf = leaves[index % leaves.length] ?? { left: 0, right: 0, tail: "right" };
    const piece = guides[index];
    const length = piece === undefined ? 12 : lengthOf(piece, 12);
    return { x: guideAt(leaf, length), length };
  };
  return {
    guide: (pieces) =>
      pieces.map((_, index) => {
        const { x, length } = guideOf(index);
        return [box(x, 0, length, 1.5)];
      }),
    bracket: (pieces) =>
      groupsOf(pieces, Math.max(1, guides.length)).flatMap((ofGuide, index) => {
        const { x, length } = guideOf(index);
        return fromEndToEnd(ofGuide.length, x + 1, x + length - 1).map((at) => [
          boxAt({ x: at, y: 1.25 }, 2, 2.5),
        ]);
      }),
    centerStop: (pieces) =>
      pieces.map((_, index) => [boxAt({ x: doorway.width / 2 + 4 * index, y: 1.5 }, 3, 3)]),
  };
}
