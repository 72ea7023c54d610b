/** What the kit book has to say about an opening, for the crew: its order of work first. */
import { isFormulaError } from "../formulas/value";
import type { FindingLevel } from "../base/finding";
import { messageText, valueText, type ShowLength } from "../takeoff/describe";
import { openingAt, valuesOf, type Take } from "../takeoff/take";
import { isTrue } from "../takeoff/truth";

export type OpeningNote = { readonly level: FindingLevel; readonly text: string };

const isOrderOfWork = ({ text }: OpeningNote): boolean => /^order of work\b/i.test(text);

/** The limits that hold for the opening, by the sizes it was counted with; the order of work first. */
export function openingNotes(take: Take, row: number, show: ShowLength): readonly OpeningNote[] {
  const notes = take.type.limits.flatMap(({ when, level, message }): OpeningNote[] => {
    const holds = valuesOf(take, when)[row] ?? null;
    if (isFormulaError(holds) || !isTrue(holds)) return [];
    return [{ level, text: messageText(take, message, row, show) }];
  });
  return [...notes.filter(isOrderOfWork), ...notes.filter((note) => !isOrderOfWork(note))];
}

/** Fields of every opening that are said elsewhere, or that no one on site needs. */
const saidElsewhere: ReadonlySet<string> = new Set(["job", "mark", "quantity", "type"]);

/**
 * The schedule's own sizes and words for an opening, as `Width 8'-0"`; blanks are left out. They
 * come from the opening itself: a take has only the fields that its kit book reads.
 */
export const openingWords = (take: Take, row: number, show: ShowLength): readonly string[] =>
  take.type.slots.flatMap(({ name, label, kind }, slot): string[] => {
    const isSize = take.type.sizes.some((size) => size.slot === slot);
    if (isSize || saidElsewhere.has(name)) return [];
    const text = valueText(openingAt(take, row).fields[name] ?? null, kind, show);
    return text === "blank" ? [] : [`${label} ${text}`];
  });
