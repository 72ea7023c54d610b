/** The numbers of an opening that a picture is drawn from: the schedule's and the kit book's own. */
import { normalName } from "../formulas/names";
import type { FormulaValue } from "../formulas/value";
import type { StandardFieldName } from "../kitbook/fields";
import { openingAt, valueAt, type Take } from "../takeoff/take";
import type { KitPiece } from "./connections";
import type { PartKind } from "./partKinds";

export type Doorway = {
  /** Inches. */
  readonly width: number;
  readonly height: number;
  readonly postHeight: number | null;
  readonly tailRun: number | null;
  readonly hasTailPost: boolean;
  readonly hasTransom: boolean;
  readonly transomHeight: number | null;
  /** A length or count of the kit book by its name, above zero; `null` where it has no such number. */
  readonly size: (name: string) => number | null;
  readonly pieces: (kind: PartKind) => readonly KitPiece[];
};

/** Where neither the schedule nor a piece says how large the opening is. */
const plainDoor = { width: 36, height: 84 } as const;

export function doorwayOf(take: Take, row: number, pieces: readonly KitPiece[]): Doorway {
  const { fields } = openingAt(take, row);
  const field = (name: StandardFieldName) => fields[name] ?? null;
  const length = (value: FormulaValue): number | null =>
    typeof value === "number" && Number.isFinite(value) && value > 0 ? value : null;
  const ofKind = (kind: PartKind): readonly KitPiece[] =>
    pieces.filter((piece) => piece.kind === kind);
  const panels = ofKind("panel");
  return {
    width: length(field("width")) ?? (panelsWidth(panels) || plainDoor.width),
    height: length(field("height")) ?? (panelsHeight(panels) || plainDoor.height),
    postHeight: length(field("post_height")),
    tailRun: length(field("tail_run")),
    hasTailPost: field("tail_post") === true,
    hasTransom: field("transom") === true,
    transomHeight: length(field("transom_height")),
    size: (name) => {
      const size = take.type.sizes.find((each) => normalName(each.name) === normalName(name));
      return size === undefined ? null : length(valueAt(take, size.slot, row));
    },
    pieces: ofKind,
  };
}

/** All panels side by side; zero where they have no size. */
export const panelsWidth = (panels: readonly KitPiece[]): number =>
  panels.reduce((sum, { size: [width = 0] }) => sum + width, 0);

/** The highest panel; zero where they have no size. */
export const panelsHeight = (panels: readonly KitPiece[]): number =>
  panels.reduce((most, { size: [, height = 0] }) => Math.max(most, height), 0);
