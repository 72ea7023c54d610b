/**
 * Kit-book rows as a person typed them: nothing is checked yet, so any cell may hold anything.
 *
 * Every cell keeps its place, so that a finding can name it. `compileKitBook` turns rows into a
 * checked `KitBook`.
 */
import type { TypedCell } from "../base/cell";

/** The four sections of a kit book, in the order they are read and written. */
export const kitBookSections = ["sizes", "parts", "limits", "charts"] as const;
export type KitBookSection = (typeof kitBookSections)[number];

/** The columns of each section, in the order they are written. */
export const sectionColumns = {
  sizes: ["type", "name", "formula", "unit", "note", "basis"],
  parts: [
    "type",
    "bag",
    "step",
    "item",
    "size",
    "quantity",
    "when",
    "cutLength",
    "minutes",
    "joined",
    "basis",
  ],
  limits: ["type", "when", "level", "message", "basis"],
  charts: ["chart", "match", "down", "across", "value", "basis"],
} as const satisfies Readonly<Record<KitBookSection, readonly string[]>>;

type RowOf<Section extends KitBookSection> = Readonly<
  Record<(typeof sectionColumns)[Section][number], TypedCell>
>;

/**
 * A size worked out for an opening: `name` is what other formulas call it, `unit` one of `sizeUnits`.
 *
 * `type` (here and in the other sections) is an opening type, several separated by commas, or `*`
 * for every type. A type's own size stands in for one of the same name under `*`.
 */
export type SizeRow = RowOf<"sizes">;

/**
 * What an opening needs.
 *
 * `bag` and `step` place it in the order of work; `step` may be a formula. `item` is an item's code,
 * or a formula that gives one when it starts with `=`. `size` is one formula, or two separated by
 * ` x `, in inches. `quantity` is for one opening; a blank `when` is always. `cutLength` is in
 * inches, for what is cut from stock. `minutes` is the work of the row for one opening. `joined` is the
 * thickness in inches of what a bolt joins, for checks of the bolt's length; nothing is counted by it.
 */
export type PartRow = RowOf<"parts">;

/** What must be said about an opening when `when` is true. `message` may hold `{name}` of fields and sizes. */
export type LimitRow = RowOf<"limits">;

/** One entry of a chart in long form. A blank `across` in all of a chart's rows makes it one-way. */
export type ChartRow = RowOf<"charts">;

export type KitBookRows = {
  readonly sizes: readonly SizeRow[];
  readonly parts: readonly PartRow[];
  readonly limits: readonly LimitRow[];
  readonly charts: readonly ChartRow[];
};
