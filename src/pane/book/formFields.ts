/** An opening as a person types it to try a kit book: its fields as texts, read as a schedule's row is read. */
import { checkGivenOpening } from "../../app/openings/givenOpening";
import { fieldsRead } from "../../app/kitbook/bookSheets";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import type { Finding } from "../../core/base/finding";
import { inches } from "../../core/base/units";
import type { FormulaValue } from "../../core/formulas/value";
import { standardFields, type Field } from "../../core/kitbook/fields";
import type { OpeningType } from "../../core/kitbook/kitBook";
import { readLength } from "../../core/lengths/readLength";
import type { Opening } from "../../core/openings/opening";
import { numberText } from "../../core/takeoff/describe";

/** Texts by the names of fields. */
export type OpeningTexts = Readonly<Record<string, string>>;

/** What tells one opening of a job from another, and is no size. */
const notTyped: ReadonlySet<string> = new Set(["job", "mark", "type"]);
/** Every opening of a schedule has these. */
const always: ReadonlySet<string> = new Set(["width", "height"]);

/** The fields to type for a type: those that its rows read, and a width and height. */
export function formFields(hand: KitBookAtHand, type: OpeningType): readonly Field[] {
  const read = new Set(fieldsRead(hand, type).map(({ name }) => name));
  return hand.book.fields.filter(
    ({ name }) => !notTyped.has(name) && (always.has(name) || read.has(name)),
  );
}

export type ReadOpening = {
  /** `null` where it cannot be used. */
  readonly opening: Opening | null;
  readonly findings: readonly Finding[];
};

export function readOpeningTexts(
  { unit }: KitBookAtHand,
  type: OpeningType,
  texts: OpeningTexts,
): ReadOpening {
  const standard = new Set<string>(standardFields.map(({ name }) => name));
  const filled = Object.entries(texts).map(
    ([name, text]) => [name, text.trim() === "" ? null : text] as const,
  );
  const fields = Object.fromEntries(filled.filter(([name]) => standard.has(name)));
  const others = Object.fromEntries(filled.filter(([name]) => !standard.has(name)));
  const given = { fields: { quantity: 1, ...fields, type: type.name }, others };
  const { openings, uncounted, findings } = checkGivenOpening(given, [type.name], unit);
  return { opening: uncounted.length > 0 ? null : (openings[0] ?? null), findings };
}

/** The opening's fields as texts that read back as they are. */
export const textsOf = (hand: KitBookAtHand, type: OpeningType, opening: Opening): OpeningTexts =>
  Object.fromEntries(
    formFields(hand, type).map((field) => [
      field.name,
      fieldText(hand, field, opening.fields[field.name] ?? null),
    ]),
  );

function fieldText(hand: KitBookAtHand, { kind }: Field, value: FormulaValue): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value;
  if (typeof value !== "number") return "";
  return kind === "length" ? lengthText(hand, value) : numberText(value);
}

/** In the user's style where that says it exactly, else in inches. */
export function lengthText({ show, unit }: KitBookAtHand, value: number): string {
  const text = show(inches(value));
  const read = readLength(text, unit);
  const isExact =
    read.ok && Math.abs(read.value.length.numerator / read.value.length.denominator - value) < 1e-9;
  return isExact ? text : `${numberText(value)}"`;
}
