/** What a person typed into one row of a hardware sheet, and what is kept of it. */
import type { CellPlace } from "../base/cell";
import { readChange, writeChange } from "./change";
import type { AddedName, LineName, MoveName, RowName } from "./rowName";

/** The columns of a hardware sheet that a person types into. */
export const typedColumns = [
  "item",
  "size",
  "quantity",
  "correction",
  "spares",
  "reason",
  "by",
] as const;
export type TypedColumn = (typeof typedColumns)[number];

/**
 * The texts as typed; the empty text for nothing. `item`, `size` and `quantity` are typed only in
 * rows that are added by hand; `spares` only where they are not by the item's rule.
 */
export type TypedRow = Readonly<Record<TypedColumn, string>>;

export const nothingTyped: TypedRow = {
  item: "",
  size: "",
  quantity: "",
  correction: "",
  spares: "",
  reason: "",
  by: "",
};

export const isSameTyped = (one: TypedRow, other: TypedRow): boolean =>
  typedColumns.every((column) => one[column] === other[column]);

/** Whether both say the same, in whatever spelling of the numbers: `14` and `=14`. */
export const isSameMeaning = (one: TypedRow, other: TypedRow): boolean =>
  typedColumns.every((column) => plainCell(column, one) === plainCell(column, other));

function plainCell(column: TypedColumn, typed: TypedRow): string {
  const text = typed[column];
  const isNumber = column === "correction" || column === "quantity" || column === "spares";
  const change = isNumber ? readChange(text) : null;
  return change?.ok === true ? writeChange(change.value) : text;
}

export const isNothing = (typed: TypedRow): boolean => isSameTyped(typed, nothingTyped);

/** A correction of a line, a row added by hand, or the answer to a question; never with nothing typed. */
export type Correction<Name extends RowName = RowName> = {
  readonly name: Name;
  readonly typed: TypedRow;
  /** What was counted when it was typed; `null` where that is not known. */
  readonly counted: number | null;
};
export type LineCorrection = Correction<LineName>;
export type AddedRow = Correction<AddedName>;
export type MoveAnswer = Correction<MoveName>;

export const isLineCorrection = (each: Correction): each is LineCorrection =>
  each.name.kind === "line";
export const isAddedRow = (each: Correction): each is AddedRow => each.name.kind === "added";
export const isMoveAnswer = (each: Correction): each is MoveAnswer => each.name.kind === "move";

/** One row of a hardware sheet as it stands. */
export type ReadRow = {
  /** `null` for a row without a name, which a person put in. */
  readonly name: RowName | null;
  /** The job in whose part of the sheet it stands. */
  readonly job: string;
  readonly typed: TypedRow;
  readonly counted: number | null;
  /** The cell of its correction, or of the quantity that is added. */
  readonly place: CellPlace;
};

/** A hardware sheet as it stands. `subject` is that of its mark. */
export type ReadSheet = {
  readonly subject: string;
  readonly rows: readonly ReadRow[];
};
