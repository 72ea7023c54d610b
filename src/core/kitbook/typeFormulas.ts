/** All formulas of an opening type together, for whoever asks what its rows read. */
import type { BookFormula, OpeningType } from "./kitBook";

export const formulasOf = ({ sizes, parts, limits }: OpeningType): readonly BookFormula[] => [
  ...sizes.map(({ formula }) => formula),
  ...limits.map(({ when }) => when),
  ...parts.flatMap(({ item, size, quantity, when, cutLength, minutes, joined, step }) => [
    ...(item.kind === "formula" ? [item.formula] : []),
    ...size,
    quantity,
    ...[when, cutLength, minutes, joined, step].filter((formula) => formula !== null),
  ]),
];

/** The slots whose values the messages of limits show. */
export const slotsSaidBy = ({ limits }: OpeningType): readonly number[] =>
  limits.flatMap(({ message }) =>
    message.flatMap((piece) => (piece.kind === "value" ? [piece.slot] : [])),
  );
