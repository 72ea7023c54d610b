/**
 * Suggestions of actuals taken over into the kit book, those that a person names and no other. The
 * book that comes of it is the next edition, beside the sheets that stand. Spares are on the items
 * sheet, which is the person's to type into: they are told and never written.
 */
import { err, ok, type Result } from "../../core/base/result";
import { placeName } from "../../core/base/cell";
import type { KitBookRows } from "../../core/kitbook/rows";
import type { Drawing } from "../../workbook/drawing";
import { importDrawings } from "../kitbook/importKitBook";
import type { Inputs } from "../reading/inputs";
import { minutesRow, type PlacedSuggestion } from "./jobActuals";

/**
 * The sheets of the kit book with the suggestions of these numbers, from 1 in the order of the report.
 * Error: which number cannot be accepted, and why.
 */
export function acceptSuggestions(
  suggestions: readonly PlacedSuggestion[],
  numbers: readonly number[],
  { kitBook, kitBookEdition }: Pick<Inputs, "kitBook" | "kitBookEdition">,
): Result<readonly Drawing[], string> {
  const accepted = new Map<string, string>();
  for (const number of numbers) {
    const suggestion = suggestions[number - 1];
    if (suggestion === undefined) {
      return err(`There is no suggestion ${number}; there are ${suggestions.length}.`);
    }
    const { kind, row, to, item, place } = suggestion;
    if (kind === "spares") {
      const cell = place === null ? "an items sheet of your own" : placeName(place);
      return err(`Suggestion ${number} is about spares of ${item}: type ${to} into ${cell}.`);
    }
    accepted.set(row, to);
  }
  return ok(importDrawings(withMinutes(kitBook, accepted), kitBookEdition));
}

function withMinutes(rows: KitBookRows, accepted: ReadonlyMap<string, string>): KitBookRows {
  return {
    ...rows,
    parts: rows.parts.map((part, index) => {
      const to = accepted.get(minutesRow(index));
      if (to === undefined) return part;
      const number = Number(to);
      const value = Number.isFinite(number) ? number : to;
      return { ...part, minutes: { ...part.minutes, value } };
    }),
  };
}
