/** A drawing as text that a person can read in a difference: a line a row, cells parted by ` | `. */
import { cellName, cellText } from "../../src/core/base/cell";
import type { Drawing, DrawnCell } from "../../src/workbook/drawing";

export function drawingText({ name, rows, pictures = [] }: Drawing): string {
  const lines = rows.map(({ cells }) =>
    cells
      .map(cellWords)
      .join(" | ")
      .replace(/[ |]+$/, ""),
  );
  const drawn = pictures.map(
    ({ title, width, height, ...place }) =>
      `[${cellName(place)}: ${title}, ${Math.round(width)} x ${Math.round(height)} points]`,
  );
  return [`# ${name}`, ...lines, ...drawn, ""].join("\n");
}

function cellWords(cell: DrawnCell | null): string {
  if (cell === null) return "";
  switch (cell.kind) {
    case "text":
      return cell.text;
    case "number":
      return String(cell.number);
    case "yesNo":
      return cell.yes ? "TRUE" : "FALSE";
    case "date":
      return cellText(cell.date);
    case "formula":
      return `${cell.formula} -> ${String(cell.result)}`;
    case "blank":
      return "";
  }
}
