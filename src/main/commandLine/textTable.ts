/** Columns of text for a terminal. */

export type TextColumn = { readonly heading: string; readonly align: "left" | "right" };

/** Rows under their headings, each column as wide as its widest cell, two spaces between. */
export function textTable(
  columns: readonly TextColumn[],
  rows: readonly (readonly string[])[],
): readonly string[] {
  const widths = columns.map(({ heading }, column) =>
    Math.max(heading.length, ...rows.map((row) => (row[column] ?? "").length)),
  );
  const line = (cells: readonly string[]): string =>
    columns
      .map(({ align }, column) => {
        const width = widths[column] ?? 0;
        const cell = cells[column] ?? "";
        return align === "right" ? cell.padStart(width) : cell.padEnd(width);
      })
      .join("  ")
      .trimEnd();
  return [
    line(columns.map(({ heading }) => heading)),
    widths.map((width) => "-".repeat(width)).join("  "),
    ...rows.map(line),
  ];
}
