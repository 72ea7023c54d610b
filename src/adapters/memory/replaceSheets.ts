/** Drawings put into a workbook that is plain data. */
import type { Drawing } from "../../workbook/drawing";
import { drawnSheet, styleTable } from "../../workbook/drawnSheet";
import type { PlannedSheet } from "../../workbook/plan";
import type { SheetSnapshot, WorkbookSnapshot } from "../../workbook/snapshot";
import { freeTableName } from "../../workbook/tableNames";

/** The workbook once `planned` is carried out. */
export function withPlannedSheet(
  workbook: WorkbookSnapshot,
  { drawing, name, was, keptAs }: PlannedSheet,
): WorkbookSnapshot {
  const table = styleTable(workbook.styles);
  const others = workbook.sheets.filter((sheet) => was === "new" || sheet.name !== name);
  const taken = others.flatMap(({ tables }) => tables.map((each) => each.name));
  const fresh = withTableNames(drawnSheet(drawing, name, table), taken);
  const sheets = workbook.sheets.flatMap((sheet) => {
    if (was === "new" || sheet.name !== name) return [sheet];
    return keptAs === null ? [fresh] : [fresh, kept(sheet, keptAs, [...taken, ...names(fresh)])];
  });
  return { ...workbook, sheets: was === "new" ? [...sheets, fresh] : sheets, styles: table.styles };
}

/** The old sheet as the person's own: no mark, and table names that leave ours free. */
const kept = (sheet: SheetSnapshot, name: string, taken: readonly string[]): SheetSnapshot =>
  withTableNames({ ...sheet, name, mark: null, written: null }, taken);

function withTableNames(sheet: SheetSnapshot, taken: readonly string[]): SheetSnapshot {
  const used = [...taken];
  const tables: Drawing["tables"] = sheet.tables.map((table) => {
    const name = freeTableName(table.name, used);
    used.push(name);
    return { ...table, name };
  });
  return { ...sheet, tables };
}

const names = ({ tables }: SheetSnapshot): string[] => tables.map(({ name }) => name);
