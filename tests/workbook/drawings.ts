/** Small drawings for tests. */
import type { DrawnCell, Drawing, SheetMark } from "../../src/workbook/drawing";

/** `=…` is a formula that comes to 0; `'…` is text without the apostrophe; all else is itself. */
export function drawn(cell: string | number | boolean | null): DrawnCell | null {
  if (cell === null) return null;
  if (typeof cell === "number") return { kind: "number", number: cell, look: "body" };
  if (typeof cell === "boolean") return { kind: "yesNo", yes: cell, look: "body" };
  if (cell.startsWith("=")) return { kind: "formula", formula: cell, result: 0, look: "body" };
  return { kind: "text", text: cell.replace(/^'/, ""), look: "body" };
}

type Cells = readonly (readonly (DrawnCell | string | number | boolean | null)[])[];

/** A drawing of `cells` (see `drawn`), marked as the sheet `mark`, with nothing else on it. */
export function drawing(
  name: string,
  mark: SheetMark | null,
  cells: Cells,
  more: Partial<Drawing> = {},
): Drawing {
  return {
    name,
    mark,
    columnWidths: [],
    rows: cells.map((row) => ({
      cells: row.map((cell) => (typeof cell === "object" ? cell : drawn(cell))),
    })),
    frozenRows: 0,
    frozenColumns: 0,
    tables: [],
    choices: [],
    print: {
      orientation: "portrait",
      fitToOnePageWide: true,
      breaksBefore: [],
      header: "",
      footer: "",
    },
    ...more,
  };
}
