/** The workbook that the embedded page opens with when nothing is kept in the browser. */
import type { SheetSnapshot, WorkbookSnapshot } from "../../workbook/snapshot";

/** A workbook with one blank sheet. */
export function firstWorkbook(): Promise<WorkbookSnapshot> {
  const sheet: SheetSnapshot = {
    name: "Schedule",
    visible: true,
    isProtected: false,
    mark: null,
    written: null,
    rows: [],
    columnWidths: [],
    rowHeights: [],
    frozenRows: 0,
    frozenColumns: 0,
    merges: [],
    tables: [],
    choices: [],
    print: null,
  };
  return Promise.resolve({
    name: "",
    sheets: [sheet],
    activeSheet: sheet.name,
    styles: [],
    names: [],
    settings: {},
    leftOut: [],
  });
}
