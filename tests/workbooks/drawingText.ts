/** A drawing as text that a person can read in a difference: a line a row, cells parted by ` | `. */
import { cellText } from "../../src/core/base/cell";
import type { Drawing, DrawnCell } from "../../src/workbook/drawing";

export function drawingText({ name, rows }: Drawing): string {
  const lines = rows.map(({ cells }) =>
    cells
      .map(cellWords)
      .join(" | ")
      .replace(/[ |]+$/, ""),
  );
  return [`# ${name}`, ...lines, ""].join("\n");
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
