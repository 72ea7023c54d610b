/** Draws a sheet on a fresh worksheet: its cells, looks, drop-downs and notes. */
import { cellName, sheetReference } from "../../core/base/cell";
import type { CellSnapshot, CellStyle, SheetSnapshot } from "../../workbook/snapshot";
import { putChoice, type ListPlaces } from "./choices";
import { hasExcelApi } from "./inExcel";
import { settingBytes, type Outbox } from "./outbox";
import { putNumberFormats, putStyles } from "./styling";

/** A formula that can only be written once all tables are made; counted from zero. */
export type LateFormula = {
  readonly row: number;
  readonly column: number;
  readonly formula: string;
};

/** Rows of values go out in pieces of about this many bytes. */
const pieceBytes = 500_000;

/**
 * Writes everything but the formulas for which `isLate` holds, and returns those. Number formats
 * come after the values, so that text is told from numbers by the apostrophe alone.
 */
export async function drawCells(
  box: Outbox,
  worksheet: Excel.Worksheet,
  sheet: SheetSnapshot,
  styles: readonly CellStyle[],
  isLate: (formula: string) => boolean,
): Promise<readonly LateFormula[]> {
  const late: LateFormula[] = [];
  const lines = sheet.rows.map((cells, row) =>
    cells.map((cell, column) => {
      if (cell?.formula === undefined || !isLate(cell.formula)) return entry(cell);
      late.push({ row, column, formula: cell.formula });
      return null;
    }),
  );
  await putLines(box, worksheet, lines);
  await putStyles(box, worksheet, sheet, styles);
  await putNumberFormats(box, worksheet, sheet, styles);
  for (const { row, column, rows, columns } of sheet.merges) {
    await box.room(settingBytes);
    worksheet.getRangeByIndexes(row, column, rows, columns).merge(false);
  }
  return late;
}

/** Drop-downs and notes; after the cells, and after the sheet of lists is there. */
export async function putExtras(
  box: Outbox,
  worksheet: Excel.Worksheet,
  sheet: SheetSnapshot,
  places: ListPlaces,
): Promise<void> {
  for (const choice of sheet.choices) {
    await box.room(3 * settingBytes + choice.list.join().length);
    putChoice(worksheet, choice, places);
  }
  for (const [row, cells] of sheet.rows.entries()) {
    for (const [column, cell] of cells.entries()) {
      if (cell?.note === undefined) continue;
      await box.room(settingBytes + cell.note.length);
      putNote(worksheet, sheet.name, row, column, cell.note);
    }
  }
}

/** Excel before notes could be written shows the text when the cell is selected. */
function putNote(
  worksheet: Excel.Worksheet,
  aside: string,
  row: number,
  column: number,
  note: string,
): void {
  if (hasExcelApi("1.18")) {
    worksheet.notes.add(`${sheetReference(aside)}!${cellName({ row, column })}`, note);
    return;
  }
  const longestMessage = 255;
  const message = note.length <= longestMessage ? note : `${note.slice(0, longestMessage - 1)}…`;
  worksheet.getCell(row, column).dataValidation.prompt = { showPrompt: true, title: "", message };
}

/** What to write so that Excel takes a text as a text, whatever it starts with. `null` leaves it blank. */
function entry(cell: CellSnapshot | null): string | number | boolean | null {
  if (cell === null) return null;
  if (cell.formula !== undefined) return cell.formula;
  const { value } = cell;
  if (value === null || value === "") return null;
  if (typeof value === "string") return `'${value}`;
  if (typeof value !== "object") return value;
  return value.kind === "date" ? value.serial : value.error;
}

type Line = readonly (string | number | boolean | null)[];

async function putLines(
  box: Outbox,
  worksheet: Excel.Worksheet,
  lines: readonly Line[],
): Promise<void> {
  const width = Math.max(0, ...lines.map((line) => line.length));
  if (width === 0) return;
  const encoder = new TextEncoder();
  let piece: Line[] = [];
  let bytes = 0;
  let first = 0;
  const put = async (): Promise<void> => {
    if (piece.length === 0) return;
    await box.room(bytes + settingBytes * Math.ceil((piece.length * width) / 1500));
    const range = worksheet.getRangeByIndexes(first, 0, piece.length, width);
    range.values = piece as (string | number | boolean)[][];
    first += piece.length;
    piece = [];
    bytes = 0;
  };
  for (const line of lines) {
    const full = Array.from({ length: width }, (_, column) => line[column] ?? null);
    const size = encoder.encode(JSON.stringify(full)).length;
    if (bytes + size > pieceBytes) await put();
    piece.push(full);
    bytes += size;
  }
  await put();
}

/** Writes formulas that had to wait, in runs down a column. */
export async function putLateFormulas(
  box: Outbox,
  worksheet: Excel.Worksheet,
  late: readonly LateFormula[],
): Promise<void> {
  const sorted = [...late].sort((one, other) => one.column - other.column || one.row - other.row);
  let run: LateFormula[] = [];
  let bytes = 0;
  const put = async (): Promise<void> => {
    const [first] = run;
    if (first === undefined) return;
    await box.room(bytes + settingBytes);
    worksheet.getRangeByIndexes(first.row, first.column, run.length, 1).formulas = run.map(
      ({ formula }) => [formula],
    );
    run = [];
    bytes = 0;
  };
  for (const each of sorted) {
    const last = run.at(-1);
    const follows = last?.column === each.column && last.row + 1 === each.row;
    if (last !== undefined && (!follows || bytes > pieceBytes)) await put();
    run.push(each);
    bytes += each.formula.length + 5;
  }
  await put();
}
