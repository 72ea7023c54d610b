/** What changes at a boundary, one thing a line, for tables of any kind. */
import type { RowSource } from "../kitbook/kitBook";
import { mapSides, type Boundary, type Sides } from "./boundaries";
import { rowName } from "./rowName";

export type BoundaryLine = Sides<number | string> & {
  /** `row`: a row of the book that does something else though no count tells it. */
  readonly kind: "counted" | "item" | "size" | "limit" | "row";
  readonly what: string;
  /** The row that it is about, where it is about one. */
  readonly source: RowSource | null;
};

/** Whether the opening is counted, then items, sizes and limits; rows only where nothing else tells of the change. */
export function boundaryLines({
  states,
  items,
  sizes,
  limits,
  rows,
}: Boundary): readonly BoundaryLine[] {
  const answers = (of: (state: Boundary["states"]["below"]) => boolean, yes: string, no: string) =>
    mapSides(states, (state) => (of(state) ? yes : no));
  const counted = answers(({ isCounted }) => isCounted, "counted", "not counted");
  const isCountedAlike = counted.below === counted.at && counted.at === counted.above;
  const told: readonly BoundaryLine[] = [
    ...(isCountedAlike
      ? []
      : [{ kind: "counted", what: "The opening", source: null, ...counted } as const]),
    ...items.map(({ item, ...sides }): BoundaryLine => ({
      kind: "item",
      what: item,
      source: null,
      ...sides,
    })),
    ...sizes.map(({ name, ...sides }): BoundaryLine => ({
      kind: "size",
      what: name,
      source: null,
      ...sides,
    })),
    ...limits.map(({ source, level, message, speaks }): BoundaryLine => ({
      kind: "limit",
      what: message,
      source,
      ...mapSides(speaks, (does) => (does ? level : "nothing")),
    })),
  ];
  if (told.length > 0) return told;
  const other = { below: "one thing", at: "another", above: "another" };
  return rows.map((source): BoundaryLine => ({
    kind: "row",
    what: rowName(source),
    source,
    ...other,
  }));
}
