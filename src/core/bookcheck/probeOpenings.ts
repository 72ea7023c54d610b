/** Openings to try a book with: values at which something may happen, mixed by chance from a fixed seed. */
import { pieces } from "../base/units";
import type { FormulaValue } from "../formulas/value";
import type { KitBook, OpeningType } from "../kitbook/kitBook";
import type { Opening } from "../openings/opening";
import { randomFromSeed } from "../pricing/chances/randomNumbers";
import { fieldsBehind } from "../takeoff/take";
import { formulasOf } from "../kitbook/typeFormulas";
import { fieldChoices, type FieldChoices } from "./fieldChoices";
import { openingState } from "./openingState";
import { rowOutcomes } from "./rowOutcomes";

/** An opening of no schedule. */
export const openingWith = (
  type: OpeningType,
  fields: Readonly<Record<string, FormulaValue>>,
): Opening => ({
  place: { sheet: "", row: 0, column: 0 },
  job: "",
  mark: "",
  quantity: pieces(1),
  type: type.name,
  fields,
  places: {},
});

/** The slots of the fields that any formula of the type reads, directly or through sizes. */
export const slotsOf = (type: OpeningType): readonly number[] => [
  ...new Set(formulasOf(type).flatMap((formula) => fieldsBehind({ type }, formula))),
];

/** Inches: most openings lie below. */
const mostLength = 400;

/** So many openings of the type. The same book gives the same ones each time. */
export function probeOpenings(book: KitBook, type: OpeningType, count: number): readonly Opening[] {
  const { uniform } = randomFromSeed(1);
  const choices = fieldChoices(book, type, slotsOf(type));
  return mixed(type, count, choices, ({ values, isNumber }) => {
    // One in four numbers is any quarter inch, the others one of interest.
    if (isNumber && uniform() < 0.25) return Math.ceil(uniform() * 4 * mostLength) / 4;
    return values[Math.floor(uniform() * values.length)] ?? null;
  });
}

const mixed = (
  type: OpeningType,
  count: number,
  choices: readonly FieldChoices[],
  choose: (field: FieldChoices) => FormulaValue,
): readonly Opening[] =>
  Array.from({ length: count }, () =>
    openingWith(
      type,
      Object.fromEntries(
        choices.map((field): [string, FormulaValue] => [field.name, choose(field)]),
      ),
    ),
  );

/** Openings tried at once for one that is counted, and how often at most. */
const triesAtOnce = 100;
const mostTries = 20;

/** An opening in whole feet that the book counts, made up; the first one tried where none is counted. */
export function countedOpening(book: KitBook, type: OpeningType): Opening {
  const { uniform } = randomFromSeed(2);
  const choices = fieldChoices(book, type, slotsOf(type));
  let first: Opening | undefined;
  for (let batch = 0; batch < mostTries; batch += 1) {
    const openings = mixed(type, triesAtOnce, choices, ({ values, isNumber }) =>
      isNumber
        ? 12 * Math.ceil(uniform() * mostFeet)
        : (values[Math.floor(uniform() * values.length)] ?? null),
    );
    first ??= openings[0];
    const outcomes = rowOutcomes(book, type, openings, () => "");
    const counted = openings.find((_, row) => openingState(outcomes, row, () => "").isCounted);
    if (counted !== undefined) return counted;
  }
  return first ?? openingWith(type, {});
}

/** Doors and their posts are mostly not larger. */
const mostFeet = 12;
