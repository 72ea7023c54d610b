/** What changes in the book's rows between two openings of one type. */
import { writeSize, type LengthStyle } from "../lengths/writeLength";
import type { RowSource } from "../kitbook/kitBook";
import type { Trial, TriedLimit, TriedPart } from "./trial";

/** A row that does not do the same for both; `one` and `other` in words. */
export type TrialChange = {
  readonly source: RowSource;
  /** What the row is: a size's name, a part's item, a limit's condition. */
  readonly what: string;
  readonly one: string;
  readonly other: string;
};

type Told = {
  readonly source: RowSource;
  readonly what: string;
  readonly words: string;
  /** Alike where the row does the same: a limit that speaks of other numbers still only speaks. */
  readonly deed: string;
};

/** Sizes, then parts, then limits, each in the book's order. Nothing for two openings that are alike. */
export function compareTrials(
  one: Trial,
  other: Trial,
  lengths: LengthStyle,
): readonly TrialChange[] {
  const others = new Map(toldBy(other, lengths).map((told) => [keyOf(told.source), told]));
  return toldBy(one, lengths).flatMap(({ source, what, words, deed }) => {
    const second = others.get(keyOf(source));
    if (second === undefined || second.deed === deed) return [];
    return [{ source, what, one: words, other: second.words }];
  });
}

const toldBy = ({ sizes, parts, limits }: Trial, lengths: LengthStyle): readonly Told[] => [
  ...sizes.map(({ source, name, text }) => ({ source, what: name, words: text, deed: text })),
  ...parts.map((part) => {
    const words = partWords(part, lengths);
    return { source: part.source, what: part.itemTyped, words, deed: words };
  }),
  ...limits.map((limit) => ({
    source: limit.source,
    what: limit.when.formula,
    words: limitWords(limit),
    deed: limit.deed,
  })),
];

const keyOf = ({ section, number }: RowSource): string => `${section} ${number}`;

/** `2 PANEL (4'-0" x 7'-0")`, `none`, `not needed`, or why it fails. */
export function partWords(
  { deed, each, item, size, fault }: TriedPart,
  lengths: LengthStyle,
): string {
  if (deed === "fails") return fault;
  if (deed !== "counts" || item === null) return deed;
  const written = writeSize(size, lengths);
  return `${each} ${item}${written === "" ? "" : ` (${written})`}`;
}

/** What a limit says, or `silent`. */
export const limitWords = ({ deed, message }: TriedLimit): string =>
  deed === "silent" ? "silent" : message;
