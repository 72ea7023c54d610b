/** Where the person is, and taking them elsewhere. */
import type { CellPlace } from "../../core/base/cell";
import { err, ok, type Result } from "../../core/base/result";
import { sheetGone } from "../../workbook/faults";
import type { Selection, WorkbookFault } from "../../workbook/workbook";
import { isExcelError } from "./excelFaults";

export async function activeSheet(context: Excel.RequestContext): Promise<string> {
  const sheet = context.workbook.worksheets.getActiveWorksheet().load("name");
  await context.sync();
  return sheet.name;
}

/** What Excel says where no cells are selected: a chart or a picture is, or a chart fills the sheet. */
const withoutCells = ["InvalidSelection", "UnsupportedSheet", "ItemNotFound"];

/** The first of several areas; `null` where no cells are selected. */
export async function selection(context: Excel.RequestContext): Promise<Selection | null> {
  const areas = context.workbook.getSelectedRanges();
  const sheet = areas.worksheet.load("name");
  const first = areas.areas.getItemAt(0).load("rowIndex,columnIndex,rowCount,columnCount");
  try {
    await context.sync();
  } catch (error) {
    if (isExcelError(error) && withoutCells.includes(error.code)) return null;
    throw error;
  }
  return {
    sheet: sheet.name,
    row: first.rowIndex,
    column: first.columnIndex,
    rows: first.rowCount,
    columns: first.columnCount,
  };
}

export async function goTo(
  context: Excel.RequestContext,
  place: CellPlace,
): Promise<Result<null, WorkbookFault>> {
  const sheet = context.workbook.worksheets
    .getItemOrNullObject(place.sheet)
    .load("name,visibility");
  await context.sync();
  if (sheet.isNullObject) return err(sheetGone(place.sheet));
  if (sheet.visibility !== "Visible") {
    return err({
      code: "host-refused",
      message: `The sheet “${sheet.name}” is hidden. Unhide it (right-click a sheet tab, Unhide) and try again.`,
    });
  }
  sheet.activate();
  sheet.getCell(place.row, place.column).select();
  await context.sync();
  return ok(null);
}
