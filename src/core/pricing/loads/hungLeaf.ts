/** What hangs from the track of an opening: the parts of its leaves, weighed, and where they hang. */
import type { OpeningCounts } from "../../bags/openingCounts";
import { inches, type Inches } from "../../base/units";
import { kitPieces, type KitPiece } from "../../elevation/connections";
import { doorwayOf } from "../../elevation/doorway";
import { hungPlaces, type HungPlaces } from "../../elevation/hungDoor";
import type { PartKind } from "../../elevation/partKinds";
import { itemKey, type Item, type Items } from "../item";
import type { LeafPart } from "./leafWeight";
import type { Mesh } from "./meshWeight";

/** Panels by mesh and frame instead of by their item; both are needed for it. */
export type PanelMake = { readonly mesh: Mesh; readonly framePerFoot: number };

export type HungLeaves = {
  readonly places: HungPlaces;
  /** Of all leaves of one opening together. */
  readonly parts: readonly LeafPart[];
  /** Pounds per foot of the track by its item; `null` where that is not known. */
  readonly trackPerFoot: number | null;
};

/** Parts that stay where they are while the leaf moves. What is not named here hangs with it. */
const standing: ReadonlySet<PartKind> = new Set<PartKind>([
  "shelf",
  "frame",
  "jamb",
  "hingeJamb",
  "track",
  "trackPlate",
  "trackClamp",
  "trackStop",
  "sashGuide",
  "guide",
  "strike",
  "floorStrike",
  "hinge",
  "centerStop",
  "bracket",
  "shelfBracket",
  "corner",
  "anchor",
]);

/**
 * The hung leaves of an opening, or `null` where it has no trolley: nothing hangs. What a firm's own
 * book adds and nobody knows the place of is taken to hang on the leaf, which errs to the heavy side.
 */
export function hungLeaves(
  { take, row, pieces }: OpeningCounts,
  items: Items,
  make: PanelMake | null,
): HungLeaves | null {
  const kit = kitPieces(pieces);
  const doorway = doorwayOf(take, row, kit);
  if (doorway.pieces("trolley").length === 0) return null;
  const hanging = kit.filter(({ kind }) => !standing.has(kind));
  const isPanel = ({ kind }: KitPiece): boolean => kind === "panel" && make !== null;
  const [track] = doorway.pieces("track");
  const trackItem = items.get(itemKey(track?.contents[0]?.item ?? ""));
  return {
    places: hungPlaces(doorway),
    parts: [
      ...(make === null ? [] : madePanels(hanging.filter(isPanel), make)),
      ...itemParts(hanging, isPanel, items),
    ],
    trackPerFoot:
      trackItem?.unit.by === "length" && trackItem.weight !== null
        ? (trackItem.weight * 12) / trackItem.unit.inches
        : null,
  };
}

/** Mesh over the whole panel, and the frame around its edge. */
function madePanels(panels: readonly KitPiece[], make: PanelMake): readonly LeafPart[] {
  return panels.flatMap(({ size: [width, height], contents }): readonly LeafPart[] => {
    const name = contents[0]?.item ?? "";
    if (width === undefined || height === undefined)
      return [{ name, count: 1, kind: "each", poundsEach: null }];
    const length = inches(2 * (width + height));
    return [
      { name: `${name}: mesh`, count: 1, kind: "mesh", mesh: make.mesh, width, height },
      {
        name: `${name}: frame`,
        count: 1,
        kind: "perFoot",
        poundsPerFoot: make.framePerFoot,
        length,
      },
    ];
  });
}

/** Every item and size once, with the pieces of all places; the panel itself is left out where `isMade`. */
function itemParts(
  hanging: readonly KitPiece[],
  isMade: (piece: KitPiece) => boolean,
  items: Items,
): readonly LeafPart[] {
  const counted = new Map<string, { item: string; size: readonly Inches[]; count: number }>();
  for (const piece of hanging) {
    const contents = isMade(piece) ? piece.contents.slice(1) : piece.contents;
    for (const { item, size, pieces: count } of contents) {
      const key = [itemKey(item), ...size].join("\n");
      const known = counted.get(key) ?? { item, size, count: 0 };
      counted.set(key, { ...known, count: known.count + count });
    }
  }
  return [...counted.values()].map(({ item, size, count }) =>
    itemPart(items.get(itemKey(item)), { name: item, count }, size),
  );
}

function itemPart(
  item: Item | undefined,
  named: Pick<LeafPart, "name" | "count">,
  [first, second]: readonly Inches[],
): LeafPart {
  const weight = item?.weight ?? null;
  if (item === undefined || weight === null) return { ...named, kind: "each", poundsEach: null };
  const { unit } = item;
  if (unit.by === "piece") return { ...named, kind: "each", poundsEach: weight };
  if (first === undefined) return { ...named, kind: "each", poundsEach: null };
  if (unit.by === "length") {
    const poundsPerFoot = (weight * 12) / unit.inches;
    return { ...named, kind: "perFoot", poundsPerFoot, length: first };
  }
  if (second === undefined) return { ...named, kind: "each", poundsEach: null };
  const poundsPerSquareFoot = (weight * 144) / unit.inches;
  return { ...named, kind: "perSquareFoot", poundsPerSquareFoot, width: first, height: second };
}
