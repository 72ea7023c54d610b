/** The columns of a loading list. */
export const loadingColumns = [
  { words: "✓", width: 5 },
  { words: "What", width: 46 },
  { words: "For", width: 34 },
  { words: "Size", width: 19 },
  { words: "Pieces", width: 9, numbers: true },
  { words: "Weight (lb)", width: 12, numbers: true },
] as const;

export const loadingWidths: readonly number[] = loadingColumns.map(({ width }) => width);

/** Where the numbers that add up stand. */
export const piecesColumn = 4;
export const weightColumn = 5;
