/** What the contract suite needs of each host: a workbook to set up, to type into and to look at. */
import type { CellValue, DateValue } from "../../src/core/base/cell";
import { columnIndex } from "../../src/core/base/cell";
import { blankSheet, workbookOf } from "../../src/workbook/blankSheet";
import type { CellSnapshot, SheetSnapshot, WorkbookSnapshot } from "../../src/workbook/snapshot";
import type { Workbook } from "../../src/workbook/workbook";

/**
 * What a person put into a cell. A bare string is text, whatever it starts with. `result` is what
 * the formula comes to, for hosts that do not calculate.
 */
export type RigCell =
  string | number | boolean | DateValue | { readonly formula: string; readonly result: CellValue };

export type RigSheet = {
  readonly name: string;
  /** By cell name, such as `B3`. */
  readonly cells?: Readonly<Record<string, RigCell>>;
  readonly hidden?: boolean;
  readonly protected?: boolean;
  /** Ranges such as `B2:D4` (heading row first) by table name. */
  readonly tables?: Readonly<Record<string, string>>;
};

export type RigSetup = {
  readonly sheets: readonly RigSheet[];
};

/** A cell as it stands: a formula if there is one, else the value; a date is its serial number. */
export type SeenCell = string | number | boolean | { readonly formula: string };

export type SeenSheet = {
  readonly name: string;
  readonly visible: boolean;
  /** Every cell that is not blank, by cell name. */
  readonly cells: Readonly<Record<string, SeenCell>>;
};

export type Rig = {
  readonly workbook: Workbook;
  /** A person types into a cell; `null` clears it. */
  readonly type: (sheet: string, cell: string, typed: RigCell | null) => Promise<void>;
  readonly rename: (sheet: string, name: string) => Promise<void>;
  /** A person protects a sheet. */
  readonly protect: (sheet: string) => Promise<void>;
  /** A person protects the structure: no sheet may be added, renamed or removed. */
  readonly protectStructure: () => Promise<void>;
  /** Whether a sheet of ours can still be replaced then; Excel needs sheets aside for it. */
  readonly replacesInProtected: boolean;
  /** All sheets in order, hidden ones too, as the host has them: not through the port. */
  readonly look: () => Promise<readonly SeenSheet[]>;
  /**
   * Makes the host refuse its call number `call` from here (the first is 1); `null` for none.
   * With `onwards` it refuses all later ones too, as a workbook that was closed does.
   */
  readonly failAt: (call: number | null, onwards?: boolean) => void;
  /** How many calls reached the host since the last `failAt`. */
  readonly calls: () => number;
  readonly close: () => Promise<void>;
  /** Whether `watch` hears what a person types; a file has nobody typing. */
  readonly hearsTyping: boolean;
};

/** `B3` is row 2, column 1. */
export function cellAt(name: string): { readonly row: number; readonly column: number } {
  const [, letters = "", digits = ""] = /^([A-Z]+)(\d+)$/.exec(name) ?? [];
  if (digits === "") throw new RangeError(`Not a cell: ${name}`);
  return { row: Number(digits) - 1, column: columnIndex(letters) };
}

/** How a cell is seen, from its value and its formula. */
export function seen(value: CellValue, formula?: string | null): SeenCell | null {
  if (formula !== undefined && formula !== null) return { formula };
  if (value === null || value === "") return null;
  if (typeof value !== "object") return value;
  return value.kind === "date" ? value.serial : value.error;
}

/** A rig's cell as a snapshot has it; dates get the style `dateStyle`. */
export function snapshotCell(cell: RigCell, dateStyle: number): CellSnapshot {
  if (typeof cell !== "object") return { value: cell };
  if ("formula" in cell) return { value: cell.result, formula: cell.formula };
  return { value: cell, style: dateStyle };
}

/** The set-up as a snapshot, for hosts that open one. */
export const rigSnapshot = ({ sheets }: RigSetup): WorkbookSnapshot => ({
  ...workbookOf("Job.xlsx", sheets.map(rigSheetSnapshot)),
  styles: [{ format: "yyyy-mm-dd" }],
});

function rigSheetSnapshot(sheet: RigSheet): SheetSnapshot {
  const rows: (CellSnapshot | null)[][] = [];
  for (const [name, cell] of Object.entries(sheet.cells ?? {})) {
    const { row, column } = cellAt(name);
    while (rows.length <= row) rows.push([]);
    const cells = rows[row] ?? [];
    while (cells.length <= column) cells.push(null);
    cells[column] = snapshotCell(cell, 0);
  }
  return {
    ...blankSheet(sheet.name),
    visible: sheet.hidden !== true,
    isProtected: sheet.protected === true,
    rows,
    tables: Object.entries(sheet.tables ?? {}).map(([name, range]) => {
      const [from = "", to = from] = range.split(":");
      const [first, last] = [cellAt(from), cellAt(to)];
      return {
        name,
        headingRow: first.row,
        lastRow: last.row,
        firstColumn: first.column,
        lastColumn: last.column,
      };
    }),
  };
}
