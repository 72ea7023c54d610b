/** A drawing for a host that draws no pictures: what each shows stands in its place, in words. */
import type { Drawing, DrawnCell } from "./drawing";

/** What the names of our pictures start with, in files and so in every host that opens them. */
export const pictureName = "Cribsheet picture ";

/**
 * The same drawing where it has no picture. In a row that has cells of its own these say it already,
 * and nothing is put over them.
 */
export function withPictureWords(drawing: Drawing): Drawing {
  const { pictures = [], ...rest } = drawing;
  if (pictures.length === 0) return drawing;
  const rows = [...rest.rows];
  const width = drawing.columnWidths.length;
  for (const { row, column, title, description } of pictures) {
    const cells = [...(rows[row]?.cells ?? [])];
    if (cells.some((cell) => cell !== null)) continue;
    while (cells.length <= column) cells.push(null);
    const words: DrawnCell = {
      kind: "text",
      text: `No picture here. ${title}. ${description}`,
      look: "muted",
      wrap: true,
      ...(width - column > 1 ? { span: width - column - 1 } : {}),
    };
    cells[column] = words;
    rows[row] = { ...rows[row], cells };
  }
  return { ...rest, rows };
}
