/** What is known of a kit book, drawn as sheets of ours: its check, and the boundaries of a field. */
import type { BoundaryTable } from "../../core/bookcheck/boundaries";
import { slotsOf } from "../../core/bookcheck/probeOpenings";
import type { Field } from "../../core/kitbook/fields";
import type { OpeningType } from "../../core/kitbook/kitBook";
import type { Opening } from "../../core/openings/opening";
import { valueText } from "../../core/takeoff/describe";
import { bookCheckSheet } from "../../sheets/kitbook/bookCheckSheet";
import { boundarySheet } from "../../sheets/kitbook/boundarySheet";
import type { Drawing } from "../../workbook/drawing";
import type { KitBookCheck } from "./checkKitBook";
import type { KitBookAtHand } from "./kitBookAtHand";

export const bookCheckDrawing = (
  { book, isStarter }: KitBookAtHand,
  { findings, connections }: KitBookCheck,
): Drawing =>
  bookCheckSheet({
    findings,
    connections: connections.connections,
    types: book.types.map(({ name, parts }) => ({ name, parts: parts.length })),
    book: isStarter ? "The starter kit book" : "The workbook's own kit book",
  });

/** The fields that make a difference to an opening type, in slot order. */
export const fieldsRead = (
  { book }: Pick<KitBookAtHand, "book">,
  type: OpeningType,
): readonly Field[] =>
  slotsOf(type)
    .toSorted((one, other) => one - other)
    .flatMap((slot) => book.fields[slot] ?? []);

export type BoundaryAsked = {
  readonly type: OpeningType;
  readonly opening: Opening;
  readonly field: Field;
};

export const boundaryDrawing = (
  hand: KitBookAtHand,
  { type, opening, field }: BoundaryAsked,
  table: BoundaryTable,
): Drawing =>
  boundarySheet({
    table,
    field,
    type: type.name,
    others: fieldsRead(hand, type)
      .filter(({ name }) => name !== field.name)
      .map(
        ({ name, label, kind }) =>
          `${label} ${valueText(opening.fields[name] ?? null, kind, hand.show)}`,
      ),
    show: hand.show,
  });
