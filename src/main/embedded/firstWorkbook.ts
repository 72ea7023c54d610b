/** The workbook that the embedded page opens with when nothing is kept in the browser: the demo. */
import { demoDrawings } from "../../app/demo/demoDrawings";
import { workbookOf } from "../../workbook/blankSheet";
import { drawnSheet, styleTable } from "../../workbook/drawnSheet";
import type { WorkbookSnapshot } from "../../workbook/snapshot";

export function firstWorkbook(): WorkbookSnapshot {
  const table = styleTable();
  const sheets = demoDrawings().map((drawing) => drawnSheet(drawing, drawing.name, table));
  return { ...workbookOf("Demo", sheets), styles: table.styles };
}
