/**
 * A checked, compiled kit book. Only `compileKitBook` makes one.
 *
 * Formulas read slots: `columns[slot][row]`, where the first slots are the book's fields and the
 * slots after them the opening type's sizes. Each opening type numbers its own sizes.
 */
import type { CellPlace } from "../base/cell";
import type { Finding, FindingLevel } from "../base/finding";
import type { CompiledFormula } from "../formulas/formula";
import { normalName } from "../formulas/names";
import type { Chart } from "./chart";
import type { Field, FieldKind } from "./fields";
import type { KitBookSection } from "./rows";
import type { SizeUnit } from "./sizeUnit";

/** Where a compiled row came from. */
export type RowSource = {
  readonly section: KitBookSection;
  /** The row's number in its section, from 1, not counting blank rows and headings. */
  readonly number: number;
  /** The row's first cell; `null` for rows that come from no sheet. */
  readonly place: CellPlace | null;
};

/** A formula of one row for one opening type; `compiled.slots` are the slots that it may read. */
export type BookFormula = {
  /** As typed, without spaces at the ends. */
  readonly text: string;
  readonly place: CellPlace | null;
  readonly compiled: CompiledFormula;
};

export type CompiledSize = {
  readonly source: RowSource;
  /** As typed; formulas may write it in any case. */
  readonly name: string;
  readonly unit: SizeUnit;
  readonly formula: BookFormula;
  /** Where the value goes before the next size is worked out. */
  readonly slot: number;
  readonly note: string;
  readonly basis: string;
};

/** An item's code, or the formula that gives it. */
export type ItemBy<Formula> =
  | { readonly kind: "code"; readonly code: string }
  | { readonly kind: "formula"; readonly formula: Formula };

/** A part by its formulas, which are read first and compiled for each opening type then. */
export type PartBy<Formula> = {
  readonly bag: string;
  /** `null` comes after all steps. */
  readonly step: Formula | null;
  readonly item: ItemBy<Formula>;
  /** Of a piece, in inches: none, one or two (such as width x height). */
  readonly size: readonly Formula[];
  /** For one opening. */
  readonly quantity: Formula;
  /** `null` is always. */
  readonly when: Formula | null;
  /** Inches of stock that each piece is cut to; `null` for what is not cut. */
  readonly cutLength: Formula | null;
  /** Minutes of work for one opening; `null` is not known, which is not zero. */
  readonly minutes: Formula | null;
  /** Inches of material that a bolt joins, without washers and nut; `null` is not known. */
  readonly joined: Formula | null;
  readonly basis: string;
};

export type CompiledPart = PartBy<BookFormula> & { readonly source: RowSource };

/** A piece of a limit's message: words as they are, or the value in a slot. */
export type MessagePiece =
  | { readonly kind: "words"; readonly words: string }
  | { readonly kind: "value"; readonly slot: number };

export type CompiledLimit = {
  readonly source: RowSource;
  readonly when: BookFormula;
  readonly level: FindingLevel;
  /** As typed. */
  readonly text: string;
  readonly message: readonly MessagePiece[];
  readonly basis: string;
};

/** A row that could not be compiled, or that needs one that could not. Its finding says why. */
export type BrokenRow = { readonly source: RowSource; readonly finding: Finding };

/** What a slot holds, for messages and reasons. `name` is as `normalName` spells it. */
type Slot = {
  readonly name: string;
  /** As the book or the schedule writes it. */
  readonly label: string;
  readonly kind: FieldKind | "count";
};

export type OpeningType = {
  /** As first typed in the book. */
  readonly name: string;
  /** Fields first, then this type's sizes. */
  readonly slots: readonly Slot[];
  /** In an order in which each needs only fields and earlier ones. */
  readonly sizes: readonly CompiledSize[];
  readonly parts: readonly CompiledPart[];
  readonly limits: readonly CompiledLimit[];
  /** Rows left out. Where there is one, a count by this type is not complete. */
  readonly broken: readonly BrokenRow[];
};

export type KitBook = {
  /** The standard fields, then the schedule's further headings that formulas may use. */
  readonly fields: readonly Field[];
  /** In the order in which the book first names them. */
  readonly types: readonly OpeningType[];
  readonly charts: readonly Chart[];
};

/** An opening type's name as names are compared: in any case, spacing and punctuation. */
export const typeKey = (name: string): string => normalName(name);

/** The opening type of that name, or `undefined`. */
export const openingTypeNamed = (book: KitBook, name: string): OpeningType | undefined =>
  book.types.find((type) => typeKey(type.name) === typeKey(name));
