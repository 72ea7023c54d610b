/** An opening's counts -> its elevation. Start here: the other files are its steps. */
import type { PackedOpening } from "../bags/bags";
import type { OpeningCounts } from "../bags/openingCounts";
import { kitPieces, type KitPiece } from "./connections";
import { doorwayOf, type Doorway } from "./doorway";
import type { Elevation, Outline, Place, Shape } from "./elevation";
import { fixedPanels } from "./fixedPanels";
import { readHand } from "./hand";
import { hingedDoor } from "./hingedDoor";
import { hungDoor } from "./hungDoor";
import { boxAt, type Layout, type PieceOutlines } from "./layout";
import { mirrored } from "./mirror";
import { partKinds, partKindWords } from "./partKinds";
import { outlineBox } from "./outlineBox";
import { serviceWindow } from "./serviceWindow";

/**
 * 1. The counts become pieces, each with its fasteners.
 * 2. The parts that are there say what kind of door it is, and so how it is laid out.
 * 3. Each piece goes to its place; what the layout has no place for goes beside it.
 * 4. A left hand is the mirror image of a right one.
 *
 * Total: any book's counts give a picture, and its places hold them all.
 */
export function drawElevation(opening: OpeningCounts | PackedOpening): Elevation {
  const { take, row } = opening;
  const pieces = kitPieces(opening.pieces);
  const doorway = doorwayOf(take, row, pieces);
  const layout = layoutOf(doorway);
  const placed = placePieces(pieces, layout);
  const hand = readHand(opening.opening.fields["hand"] ?? null);
  const elevation: Elevation = {
    job: opening.opening.job,
    mark: opening.opening.mark,
    type: take.type.name,
    hand: "right",
    isHandAssumed: hand === null,
    shapes: [...layout.around.filter(({ kind }) => !isOnTop.has(kind)), ...placed.shapes].concat(
      layout.around.filter(({ kind }) => isOnTop.has(kind)),
    ),
    places: placed.places,
    measures: layout.measures,
  };
  return hand === "left" ? mirrored(elevation) : elevation;
}

/** Drawn over the parts, or the mesh would hide them. */
const isOnTop: ReadonlySet<string> = new Set(["travel", "swing", "joint"]);

/** What is counted tells what it is, whatever a firm calls its opening types. */
function layoutOf(doorway: Doorway): Layout {
  const has = (...kinds: Parameters<Doorway["pieces"]>[0][]): boolean =>
    kinds.some((kind) => doorway.pieces(kind).length > 0);
  if (has("track", "trolley", "trackPlate")) return hungDoor(doorway);
  if (has("hinge", "hingeJamb")) return hingedDoor(doorway);
  if (has("frame", "sashGuide")) return serviceWindow(doorway);
  return fixedPanels(doorway);
}

type Placed = { readonly shapes: readonly Shape[]; readonly places: readonly Place[] };

function placePieces(pieces: readonly KitPiece[], layout: Layout): Placed {
  const outlines = new Map<string, PieceOutlines>();
  for (const kind of partKinds) {
    const ofKind = pieces.filter((piece) => piece.kind === kind);
    const placer = layout.placers[kind];
    if (ofKind.length === 0 || placer === undefined) continue;
    const spots = placer(ofKind);
    for (const [index, { id }] of ofKind.entries()) {
      const spot = spots[index];
      if (spot !== undefined) outlines.set(id, spot);
    }
  }
  for (const piece of pieces) {
    const under = onWhat(piece, outlines);
    if (!outlines.has(piece.id) && under !== null) outlines.set(piece.id, under);
  }
  let beside = 0;
  for (const { id } of pieces) {
    if (outlines.has(id)) continue;
    outlines.set(id, besideIt(beside));
    beside += 1;
  }
  const inOrder = [...pieces].sort(
    (one, other) => partKinds.indexOf(one.kind) - partKinds.indexOf(other.kind),
  );
  const names = namesOf(pieces);
  return {
    shapes: inOrder.flatMap(({ id, kind }) =>
      (outlines.get(id) ?? []).map((outline): Shape => ({ kind, outline, place: id })),
    ),
    places: pieces.map((piece) => ({
      id: piece.id,
      kind: piece.kind,
      name: names.get(piece.id) ?? piece.bag,
      bag: piece.bag,
      contents: piece.contents,
    })),
  };
}

/** An anchor stands at the foot of the piece that it holds, several beside each other. */
function onWhat(
  { kind, on, nth }: KitPiece,
  outlines: ReadonlyMap<string, PieceOutlines>,
): PieceOutlines | null {
  const standing = on.filter((id) => outlines.has(id));
  const under = outlines.get(standing[nth % Math.max(1, standing.length)] ?? "");
  const [outline] = under ?? [];
  if (kind !== "anchor" || outline === undefined) return null;
  const { x, y, width } = outlineBox(outline);
  const among = Math.floor(nth / standing.length);
  return [{ form: "circle", center: { x: x + width / 2 + 1.6 * among, y: y - 0.8 }, radius: 0.7 }];
}

/** A column of boxes left of the door for what the layout has no place for. */
const besideIt = (index: number): readonly Outline[] => [
  boxAt({ x: -14 - 7 * Math.floor(index / 12), y: 6 + 7 * (index % 12) }, 5, 5),
];

/** What each piece is called, by its id: numbered among all of its kind. */
function namesOf(pieces: readonly KitPiece[]): ReadonlyMap<string, string> {
  const alike = new Map<string, number>();
  for (const { kind } of pieces) alike.set(kind, (alike.get(kind) ?? 0) + 1);
  const named = new Map<string, number>();
  return new Map(
    pieces.map(({ id, kind, bag, contents }): [string, string] => {
      const { one, more } = partKindWords[kind];
      const number = (named.get(kind) ?? 0) + 1;
      named.set(kind, number);
      const together = contents[0]?.pieces ?? 0;
      if (kind === "other") return [id, bag];
      if (together > 1 && kind !== "trackStop") return [id, `${together} ${more}`];
      const of = alike.get(kind) ?? 1;
      return [id, of === 1 ? one : `${one} ${number} of ${of}`];
    }),
  );
}
