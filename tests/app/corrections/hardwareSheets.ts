/** What a person sees on the hardware sheets of a workbook, and types into their rows. */
import type { CellValue } from "../../../src/core/base/cell";
import { readRowName, type RowName } from "../../../src/core/corrections/rowName";
import type { Desk, DeskSheet } from "./desk";
import {
  hardwareHeadings,
  type HardwareTableColumn,
} from "../../../src/tables/hardwareTableColumns";

/** A row of a hardware sheet with a name, and the cells of it that are read. */
export type SheetRow = {
  readonly sheet: string;
  /** From zero. */
  readonly row: number;
  readonly name: RowName;
  readonly cell: (column: HardwareTableColumn) => CellValue;
};

const hardwareSheets = (desk: Desk): readonly DeskSheet[] =>
  desk.sheets().filter(({ mark }) => mark?.kind === "hardware");

type Seen = {
  readonly values: readonly (readonly CellValue[])[];
  /** Where the columns stand; a sheet whose headings are gone has none. */
  readonly columns: ReadonlyMap<HardwareTableColumn, number>;
};

/** A sheet is looked at often between two changes of it. */
const seen = new WeakMap<DeskSheet, Seen>();

function lookAt(sheet: DeskSheet): Seen {
  const last = seen.get(sheet);
  if (last !== undefined) return last;
  const values = sheet.rows.map((cells) => cells.map((cell) => cell?.value ?? null));
  const block = { sheet: sheet.name, row: 0, column: 0, rows: values };
  const now = { values, columns: hardwareHeadings(block)?.columns ?? new Map() };
  seen.set(sheet, now);
  return now;
}

/** Every row with a name on every hardware sheet of ours. */
export function sheetRows(desk: Desk): readonly SheetRow[] {
  return hardwareSheets(desk).flatMap((sheet) => {
    const { columns, values: rows } = lookAt(sheet);
    return rows.flatMap((values, row): readonly SheetRow[] => {
      const cell = (column: HardwareTableColumn): CellValue =>
        values[columns.get(column) ?? -1] ?? null;
      const text = cell("line");
      const name = typeof text === "string" ? readRowName(text) : null;
      return name === null ? [] : [{ sheet: sheet.name, row, name, cell }];
    });
  });
}

/** The reason in a row, where it is one of those by which what was typed is known again. */
export function tokenIn(row: SheetRow): string | null {
  const reason = row.cell("reason");
  return isToken(reason) ? reason : null;
}

const isToken = (value: CellValue): value is string =>
  typeof value === "string" && /^r\d+$/.test(value);

export const rowCount = (desk: Desk, sheet: string): number =>
  desk.sheets().find(({ name }) => name === sheet)?.rows.length ?? 0;

/** Every text such as `r17` on a sheet, in rows with a name or without. */
export const reasonsOn = (desk: Desk, sheet: string): readonly string[] =>
  hardwareSheets(desk)
    .filter(({ name }) => name === sheet)
    .flatMap((sheet) => lookAt(sheet).values)
    .flat()
    .filter(isToken);

/** A person types into cells of a row; `null` clears one. */
export function typeInRow(
  desk: Desk,
  { sheet, row }: Pick<SheetRow, "sheet" | "row">,
  cells: Readonly<Partial<Record<HardwareTableColumn, CellValue>>>,
): void {
  const found = desk.sheets().find(({ name }) => name === sheet);
  if (found === undefined) throw new RangeError(`No such sheet: ${sheet}`);
  const { columns } = lookAt(found);
  for (const [key, value] of Object.entries(cells)) {
    const column = columns.get(key as HardwareTableColumn);
    if (column !== undefined) desk.type({ sheet, row, column }, value);
  }
}

/** What sheet of ours each one is, by its name; those whose headings can be found. */
export const hardwareSubjects = (desk: Desk): ReadonlyMap<string, string> =>
  new Map(
    hardwareSheets(desk)
      .filter((sheet) => lookAt(sheet).columns.size > 0)
      .map(({ name, mark }) => [name, mark?.subject ?? ""]),
  );
