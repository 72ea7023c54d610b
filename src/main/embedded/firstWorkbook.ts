/** The workbooks that the embedded page can begin with. */
import { demoDrawings } from "../../app/demo/demoDrawings";
import { blankSheet, workbookOf } from "../../workbook/blankSheet";
import { drawnSheet, styleTable } from "../../workbook/drawnSheet";
import type { WorkbookSnapshot } from "../../workbook/snapshot";

/** What it opens with when nothing is kept in the browser: the demo. */
export function firstWorkbook(): WorkbookSnapshot {
  const table = styleTable();
  const sheets = demoDrawings().map((drawing) => drawnSheet(drawing, drawing.name, table));
  return { ...workbookOf("Demo", sheets), styles: table.styles };
}

/** For a person who begins with a schedule of their own. */
export const emptyWorkbook = (): WorkbookSnapshot =>
  workbookOf("New workbook", [blankSheet("Sheet1")]);
