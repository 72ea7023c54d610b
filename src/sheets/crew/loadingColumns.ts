/** The columns of a loading list. */
import type { Heading } from "../cells";

export const loadingColumns = [
  { words: "✓", width: 5 },
  { words: "What", width: 46 },
  { words: "For", width: 34 },
  { words: "Size", width: 19 },
  { words: "Pieces", width: 9, numbers: true },
  { words: "Weight", width: 12, numbers: true },
] as const;

/** Their headings, with the unit of weight. */
export const loadingHeadings = (unit: string): readonly Heading[] =>
  loadingColumns.map((column, index) =>
    index === weightColumn ? { ...column, words: `Weight (${unit})` } : column,
  );

export const loadingWidths: readonly number[] = loadingColumns.map(({ width }) => width);

/** Where the numbers that add up stand. */
export const piecesColumn = 4;
export const weightColumn = 5;
