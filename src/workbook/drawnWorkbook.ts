/** A workbook that holds nothing but drawings: what a demo or a fresh file starts as. */
import type { Drawing } from "./drawing";
import { drawnSheet, styleTable } from "./drawnSheet";
import type { WorkbookSnapshot } from "./snapshot";

/** The first drawing is the active sheet. @throws RangeError when there is none. */
export function drawnWorkbook(name: string, drawings: readonly Drawing[]): WorkbookSnapshot {
  const table = styleTable();
  const sheets = drawings.map((drawing) => drawnSheet(drawing, drawing.name, table));
  const [first] = sheets;
  if (first === undefined) throw new RangeError("A workbook needs a sheet.");
  return {
    name,
    sheets,
    activeSheet: first.name,
    styles: table.styles,
    names: [],
    settings: {},
    leftOut: [],
  };
}
