/** Openings and books for the checks of a kit book. */
import { pieces } from "../../../src/core/base/units";
import type { FormulaValue } from "../../../src/core/formulas/value";
import { compileKitBook } from "../../../src/core/kitbook/compileKitBook";
import {
  openingTypeNamed,
  type KitBook,
  type OpeningType,
} from "../../../src/core/kitbook/kitBook";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";
import type { Opening } from "../../../src/core/openings/opening";

export const { book: starter } = compileKitBook(starterKitBook, []);

export function typeIn(book: KitBook, name: string): OpeningType {
  const type = openingTypeNamed(book, name);
  if (type === undefined) throw new Error(`No opening type ${name}`);
  return type;
}

/** A door 8 ft wide and 7 ft high on 7 ft posts, with a tail post, on concrete; lengths in inches. */
export const openingOf = (
  type: string,
  fields: Readonly<Record<string, FormulaValue>> = {},
): Opening => ({
  place: { sheet: "", row: 0, column: 0 },
  job: "Job",
  mark: "A-1",
  quantity: pieces(1),
  type,
  fields: {
    width: 96,
    height: 84,
    post_height: 84,
    tail_post: true,
    floor: "concrete",
    ...fields,
  },
  places: {},
});
