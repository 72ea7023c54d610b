/**
 * Parts that have a look and a place of their own, and the items that they are.
 *
 * A kit book of a firm's own may have other items: those go, all pieces of them, to the place of
 * the part they are packed with, or of their bag.
 */

type PartKindRow = {
  /** In a list of parts, for one and for more. */
  readonly one: string;
  readonly more: string;
  /** Items by the words their code starts with; a size such as `8-7` may follow. */
  readonly codes: readonly string[];
};

const rows = {
  panel: { one: "panel", more: "panels", codes: ["PANEL"] },
  shelf: { one: "shelf", more: "shelves", codes: ["SHELF"] },
  frame: { one: "frame piece", more: "frame pieces", codes: ["FRAME WINDOW", "FRAME"] },
  jamb: { one: "jamb", more: "jambs", codes: ["JAMB"] },
  hingeJamb: { one: "hinge jamb", more: "hinge jambs", codes: ["JAMB HINGE"] },
  track: { one: "track section", more: "track sections", codes: ["TRACK"] },
  trackPlate: { one: "track plate", more: "track plates", codes: ["PLATE", "TRACK PLATE"] },
  trackClamp: { one: "track clamp", more: "track clamps", codes: ["CLAMP TRACK", "TRACK CLAMP"] },
  trolley: { one: "trolley", more: "trolleys", codes: ["TROLLEY"] },
  trackStop: { one: "track stop", more: "track stops", codes: ["STOP TRACK", "TRACK STOP"] },
  splice: { one: "splice channel", more: "splice channels", codes: ["SPLICE"] },
  angle: { one: "bottom angle", more: "bottom angles", codes: ["ANGLE"] },
  stile: { one: "tail stile", more: "tail stiles", codes: ["STILE"] },
  meetingStile: { one: "meeting stile", more: "meeting stiles", codes: ["STILE MEETING"] },
  astragal: { one: "astragal", more: "astragals", codes: ["ASTRAGAL"] },
  sashGuide: { one: "sash guide", more: "sash guides", codes: ["GUIDE SASH"] },
  guide: { one: "floor guide", more: "floor guides", codes: ["GUIDE", "FLOOR GUIDE"] },
  panelClamp: { one: "panel clamp", more: "panel clamps", codes: ["CLAMP PANEL", "PANEL CLAMP"] },
  spacer: { one: "spacer", more: "spacers", codes: ["SPACER"] },
  strike: { one: "strike", more: "strikes", codes: ["STRIKE"] },
  floorStrike: { one: "floor strike", more: "floor strikes", codes: ["STRIKE FLOOR"] },
  latch: { one: "latch", more: "latches", codes: ["LATCH"] },
  hinge: { one: "hinge", more: "hinges", codes: ["HINGE"] },
  headBolt: { one: "head bolt", more: "head bolts", codes: ["BOLT HEAD"] },
  footBolt: { one: "foot bolt", more: "foot bolts", codes: ["BOLT FOOT"] },
  centerStop: { one: "floor stop", more: "floor stops", codes: ["STOP CENTER"] },
  bracket: { one: "bracket", more: "brackets", codes: ["BRACKET"] },
  shelfBracket: { one: "shelf bracket", more: "shelf brackets", codes: ["BRACKET SHELF"] },
  corner: { one: "frame corner", more: "frame corners", codes: ["CORNER"] },
  hasp: { one: "hasp", more: "hasps", codes: ["HASP"] },
  anchor: { one: "anchor", more: "anchors", codes: ["FA", "LS", "ANCHOR"] },
  /** What the picture has no place for: one place for its bag. */
  other: { one: "bag", more: "bags", codes: [] },
} as const satisfies Readonly<Record<string, PartKindRow>>;

export type PartKind = keyof typeof rows;

/** In the order of drawing: what comes later lies on top. */
export const partKinds = Object.keys(rows) as readonly PartKind[];

export const partKindWords: Readonly<Record<PartKind, PartKindRow>> = rows;

const kindsByCode: ReadonlyMap<string, PartKind> = new Map(
  partKinds.flatMap((kind) => rows[kind].codes.map((code) => [code, kind] as const)),
);

/**
 * The kind of an item by its code, in any case; `null` for a fastener and for what is not known.
 * `PLATE 8-7` is a plate, since only a size follows; `PANEL CLIP` is no panel.
 */
export function kindOfItem(item: string): PartKind | null {
  const words = item.trim().toUpperCase().split(/\s+/);
  const sizeAt = words.findIndex((word) => /^\d/.test(word));
  const name = (sizeAt < 0 ? words : words.slice(0, sizeAt)).join(" ");
  return kindsByCode.get(name) ?? null;
}

/** The kind of what a bag holds that has nothing but fasteners; `null` for any other bag. */
export const kindOfBag = (bag: string): PartKind | null =>
  /^track\s+stops?$/i.test(bag.trim()) ? "trackStop" : null;
