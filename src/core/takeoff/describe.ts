/** Values and rows of the kit book in words, as a finding or a reason shows them. */
import { inches, type Inches } from "../base/units";
import { isFormulaError, type FormulaValue } from "../formulas/value";
import type { MessagePiece, OpeningType, RowSource } from "../kitbook/kitBook";
import { valueAt, type Take } from "./take";

/** Writes a length in the user's own style, such as `7'-0 1/2"`. */
export type ShowLength = (length: Inches) => string;

/** The value in a slot as a person reads it; see `valueText`. */
export const slotText = (take: Take, slot: number, row: number, show: ShowLength): string =>
  valueText(valueAt(take, slot, row), take.type.slots[slot]?.kind ?? "found", show);

/** A value as a person reads it: lengths in the user's style, yes and no, blanks as `blank`. */
export function valueText(
  value: FormulaValue,
  kind: OpeningType["slots"][number]["kind"],
  show: ShowLength,
): string {
  if (isFormulaError(value)) return value.code === "missing" ? "blank" : value.message;
  if (value === null || value === "") return "blank";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value;
  return kind === "length" ? show(inches(value)) : numberText(value);
}

/** A number without the tail that binary fractions leave: 0.30000000000000004 is `0.3`. */
export const numberText = (value: number): string =>
  String(Number.isInteger(value) ? value : Number(value.toPrecision(12)));

/** What the slots hold, with their names: `width = 8'-0", panels = 2`. */
export const slotsText = (
  take: Take,
  slots: readonly number[],
  row: number,
  show: ShowLength,
): string =>
  slots
    .map((slot) => `${take.type.slots[slot]?.name ?? ""} = ${slotText(take, slot, row, show)}`)
    .join(", ");

/** What the schedule says in these fields, by their headings: `Width 8'-0", Tail run blank`. */
export const fieldsText = (
  take: Take,
  fields: readonly number[],
  row: number,
  show: ShowLength,
): string =>
  fields
    .map((slot) => `${take.type.slots[slot]?.label ?? ""} ${slotText(take, slot, row, show)}`)
    .join(", ");

/** A limit's message with its values filled in. */
export const messageText = (
  take: Take,
  message: readonly MessagePiece[],
  row: number,
  show: ShowLength,
): string =>
  message
    .map((piece) => (piece.kind === "words" ? piece.words : slotText(take, piece.slot, row, show)))
    .join("");

/** A row of the kit book by its section and number: `kit book parts row 12`. */
export const describeSource = (source: RowSource): string =>
  `kit book ${source.section} row ${source.number}`;
