/** Reading a sheet or a table of a workbook that is plain data. */
import type { Block } from "../core/base/cell";
import { err, ok, type Result } from "../core/base/result";
import { sheetGone, tableGone } from "./faults";
import { sameSheetName } from "./sheetNames";
import type { SheetSnapshot, WorkbookSnapshot } from "./snapshot";
import type { Source, WorkbookFault } from "./workbook";

/** The block that `source` names, whatever the case of its letters. */
export function readSource(
  { sheets }: Pick<WorkbookSnapshot, "sheets">,
  source: Source,
): Result<Block, WorkbookFault> {
  if (source.kind === "sheet") {
    const sheet = sheets.find(({ name }) => sameSheetName(name, source.sheet));
    return sheet === undefined ? err(sheetGone(source.sheet)) : ok(usedBlock(sheet));
  }
  const wanted = source.table.toLowerCase();
  for (const sheet of sheets) {
    const table = sheet.tables.find(({ name }) => name.toLowerCase() === wanted);
    if (table !== undefined) return ok(tableBlock(sheet, table));
  }
  return err(tableGone(source.table));
}

/** All that is used of the sheet: from its first cell on, to the last row and each row's last cell that hold something. */
export function usedBlock({ name, rows }: SheetSnapshot): Block {
  const values = rows.map((cells) => {
    const row = cells.map((cell) => cell?.value ?? null);
    return row.slice(0, row.findLastIndex((value) => value !== null) + 1);
  });
  const used = values.slice(0, values.findLastIndex((row) => row.length > 0) + 1);
  return { sheet: name, row: 0, column: 0, rows: used };
}

function tableBlock(
  { name, rows }: SheetSnapshot,
  { headingRow, lastRow, firstColumn, lastColumn }: SheetSnapshot["tables"][number],
): Block {
  const values = Array.from({ length: lastRow - headingRow + 1 }, (_, row) =>
    Array.from(
      { length: lastColumn - firstColumn + 1 },
      (__, column) => rows[headingRow + row]?.[firstColumn + column]?.value ?? null,
    ),
  );
  return { sheet: name, row: headingRow, column: firstColumn, rows: values };
}
