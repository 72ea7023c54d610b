import type { RowSource } from "../kitbook/kitBook";

/** A row of the book at the start of a sentence: `Parts row 12`. */
export const rowName = ({ section, number }: RowSource): string =>
  `${section.charAt(0).toUpperCase()}${section.slice(1)} row ${number}`;
