/**
 * How the starter book is written down: one `StarterType` a file, in plain texts.
 *
 * The opening type is given once for all of its rows. `typedRows` makes the rows that the rest of
 * Cribsheet knows, as if a person had typed them into no sheet.
 */
import type { TypedCell } from "../../base/cell";
import { sectionColumns, type KitBookRows } from "../rows";

export type StarterSize = {
  readonly name: string;
  readonly formula: string | number;
  readonly unit: "length" | "count" | "text" | "yes/no";
  readonly note: string;
  readonly basis: string;
};

export type StarterPart = {
  readonly bag: string;
  readonly step: string | number;
  readonly item: string;
  readonly size?: string;
  readonly quantity: string | number;
  readonly when?: string;
  readonly cutLength?: string;
  readonly minutes?: string | number;
  readonly joined?: string;
  readonly basis: string;
};

export type StarterLimit = {
  readonly when: string;
  readonly level: "stop" | "warn" | "note";
  readonly message: string;
  readonly basis: string;
};

export type StarterEntry = {
  readonly chart: string;
  readonly match: "exact" | "next up";
  readonly down: string | number;
  readonly across?: string | number;
  readonly value: string | number;
  readonly basis: string;
};

export type StarterType = {
  readonly type: string;
  readonly sizes: readonly StarterSize[];
  readonly parts: readonly StarterPart[];
  readonly limits: readonly StarterLimit[];
};

/** Where the numbers come from. Each row of the starter book says one of these, or more. */
export const bases = {
  practice: "common practice, no source",
  practiceTimed: "common practice, no source; minutes invented",
  practiceJoined: "common practice, no source; thickness joined invented",
  assumed: "assumed",
  assumedTimed: "assumed; minutes invented",
  invented: "invented starter: replace with your supplier's",
} as const;

/** Where a part goes and when: what the parts of one connection share. */
export type Connection = Pick<StarterPart, "bag" | "step" | "when" | "basis">;

/**
 * One row for each fastener of a connection: so many of each, bolt first, nut last. `joined` is the
 * thickness that the bolt joins, invented like every thickness of the starter.
 */
export const fastened = (
  connection: Connection,
  quantity: string | number,
  fasteners: readonly string[],
  joined?: string,
): readonly StarterPart[] =>
  fasteners.map((item, index) =>
    index === 0 && joined !== undefined
      ? { ...connection, item, quantity, joined, basis: bases.practiceJoined }
      : { ...connection, item, quantity },
  );

/** An opening type whose every row is a starter only, whatever it was taken over from. */
export const allInvented = ({ type, sizes, parts, limits }: StarterType): StarterType => ({
  type,
  sizes: sizes.map((row) => ({ ...row, basis: bases.invented })),
  parts: parts.map((row) => ({ ...row, basis: bases.invented })),
  limits: limits.map((row) => ({ ...row, basis: bases.invented })),
});

/** The rows of the given opening types and charts, in their order. */
export function typedRows(
  types: readonly StarterType[],
  entries: readonly StarterEntry[],
): KitBookRows {
  return {
    sizes: types.flatMap(({ type, sizes }) =>
      sizes.map((row) => typedRow(sectionColumns.sizes, { type, ...row })),
    ),
    parts: types.flatMap(({ type, parts }) =>
      parts.map((row) => typedRow(sectionColumns.parts, { type, ...row })),
    ),
    limits: types.flatMap(({ type, limits }) =>
      limits.map((row) => typedRow(sectionColumns.limits, { type, ...row })),
    ),
    charts: entries.map((row) => typedRow(sectionColumns.charts, row)),
  };
}

/** A typed row of the given columns; one that `row` does not have is blank. */
function typedRow<Column extends string>(
  columns: readonly Column[],
  row: Readonly<Partial<Record<Column, string | number>>>,
): Readonly<Record<Column, TypedCell>> {
  const cells = columns.map((column) => [column, untyped(row[column] ?? null)]);
  // Every column of the list has its cell.
  return Object.fromEntries(cells) as Readonly<Record<Column, TypedCell>>;
}

/** A cell that nobody typed into any sheet. */
export const untyped = (value: string | number | null): TypedCell => ({ value, place: null });
