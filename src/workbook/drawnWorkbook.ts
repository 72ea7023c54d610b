/** A workbook that holds nothing but drawings: what a demo or a fresh file starts as. */
import { workbookOf } from "./blankSheet";
import type { Drawing } from "./drawing";
import { drawnSheet, styleTable } from "./drawnSheet";
import type { WorkbookSnapshot } from "./snapshot";

/** The first drawing is the active sheet. @throws RangeError when there is none. */
export function drawnWorkbook(name: string, drawings: readonly Drawing[]): WorkbookSnapshot {
  const table = styleTable();
  const sheets = drawings.map((drawing) => drawnSheet(drawing, drawing.name, table));
  if (sheets.length === 0) throw new RangeError("A workbook needs a sheet.");
  return { ...workbookOf(name, sheets), styles: table.styles };
}
