/** The columns of a packing list, and the box that is ticked on paper. */
export const packingColumns = [
  { words: "✓", width: 5 },
  { words: "Pieces", width: 8 },
  { words: "Item", width: 18 },
  { words: "Size", width: 18 },
  { words: "Description", width: 72 },
] as const;

export const packingWidths: readonly number[] = packingColumns.map(({ width }) => width);

export const checkBox = "☐";
