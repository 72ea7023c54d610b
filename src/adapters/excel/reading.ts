/** Reads a sheet or a table as a block of values. */
import { cellName, type Block, type CellValue } from "../../core/base/cell";
import { err, ok, type Result } from "../../core/base/result";
import { isDateFormat } from "../../workbook/dateFormats";
import { sheetGone, tableGone } from "../../workbook/faults";
import type { Source, WorkbookFault } from "../../workbook/workbook";
import { areaOf, loadArea, loadBands, type Area } from "./bands";
import { sheetTooLarge } from "./excelFaults";

/** Two requests and one more for each 40,000 cells, whatever the count of rows. */
export async function readBlock(
  context: Excel.RequestContext,
  source: Source,
): Promise<Result<Block, WorkbookFault>> {
  const { workbook } = context;
  if (source.kind === "sheet") {
    const sheet = workbook.worksheets.getItemOrNullObject(source.sheet).load("name");
    const used = loadArea(sheet.getUsedRangeOrNullObject(true));
    await context.sync();
    if (sheet.isNullObject) return err(sheetGone(source.sheet));
    if (used.isNullObject) return ok({ sheet: sheet.name, row: 0, column: 0, rows: [] });
    return await blockOf(context, sheet, areaOf(used));
  }
  const table = workbook.tables.getItemOrNullObject(source.table).load("showTotals");
  const sheet = table.worksheet.load("name");
  const range = loadArea(table.getRange());
  await context.sync();
  if (table.isNullObject) return err(tableGone(source.table));
  const area = areaOf(range);
  // A total row is no row of the schedule.
  const rows = area.rows - (table.showTotals ? 1 : 0);
  return await blockOf(context, sheet, { ...area, rows });
}

/** With one cell typed far from all others a sheet has billions, and reading them would take for ever. */
const mostCells = 5_000_000;

async function blockOf(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  area: Area,
): Promise<Result<Block, WorkbookFault>> {
  if (area.rows * area.columns > mostCells) {
    const last = { row: area.row + area.rows - 1, column: area.column + area.columns - 1 };
    return err(sheetTooLarge(sheet.name, cellName(last)));
  }
  const [bands = []] = await loadBands(context, [{ ...area, sheet }], (band) => {
    band.load("values,numberFormat,valueTypes");
  });
  return ok({
    sheet: sheet.name,
    row: area.row,
    column: area.column,
    rows: bands.flatMap(({ values, numberFormat, valueTypes }) =>
      values.map((line: readonly unknown[], row) =>
        line.map((value, column) =>
          cellValue(
            value,
            valueTypes[row]?.[column],
            (numberFormat[row] as readonly unknown[] | undefined)?.[column],
          ),
        ),
      ),
    ),
  });
}

/** A value with Excel's word for its kind; a number with the format of a date is a date. */
function cellValue(
  value: unknown,
  type: Excel.RangeValueType | string | undefined,
  format: unknown,
): CellValue {
  if (type === "Error") return { kind: "error", error: String(value) };
  if (typeof value === "number") {
    const isDate = typeof format === "string" && isDateFormat(format);
    return isDate ? { kind: "date", serial: value } : value;
  }
  if (typeof value === "boolean") return value;
  return type === "Empty" || typeof value !== "string" ? null : value;
}
