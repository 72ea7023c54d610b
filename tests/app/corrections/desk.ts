/** A workbook with a person before it, in whatever host: what the person sees and does. */
import { memoryWorkbook } from "../../../src/adapters/memory/memoryWorkbook";
import type { CellPlace, CellValue } from "../../../src/core/base/cell";
import type { SheetMark } from "../../../src/workbook/drawing";
import type { CellSnapshot, WorkbookSnapshot } from "../../../src/workbook/snapshot";
import type { Workbook } from "../../../src/workbook/workbook";

export type DeskSheet = {
  readonly name: string;
  readonly mark: SheetMark | null;
  readonly rows: readonly (readonly (Pick<CellSnapshot, "value" | "formula"> | null)[])[];
};

export type Desk = {
  readonly workbook: Workbook;
  readonly sheets: () => readonly DeskSheet[];
  readonly type: (place: CellPlace, value: CellValue) => void;
  /** Puts row `order[i]` of a sheet into row `i`, as sorting does; `null` is a blank row. */
  readonly rearrange: (sheet: string, order: readonly (number | null)[]) => void;
  readonly rename: (sheet: string, name: string) => void;
  readonly remove: (sheet: string) => void;
  readonly failAt: (call: number | null) => void;
  /** The same workbook, closed and opened again. */
  readonly reopened: () => Desk;
};

/** A workbook in memory, which calculates nothing. */
export function memoryDesk(start: WorkbookSnapshot): Desk {
  const workbook = memoryWorkbook(start);
  return {
    workbook,
    sheets: () => workbook.snapshot().sheets,
    type: (place, value) => workbook.type(place, value),
    rearrange: (sheet, order) => {
      const rows = workbook.snapshot().sheets.find(({ name }) => name === sheet)?.rows ?? [];
      const next = order.map((from) => (from === null ? [] : (rows[from] ?? [])));
      const width = Math.max(0, ...rows.map((cells) => cells.length));
      for (let row = 0; row < Math.max(rows.length, next.length); row += 1) {
        for (let column = 0; column < width; column += 1) {
          const cell = next[row]?.[column] ?? null;
          if (cell === (rows[row]?.[column] ?? null)) continue;
          workbook.type({ sheet, row, column }, cell?.value ?? null, cell?.formula);
        }
      }
    },
    rename: workbook.rename,
    remove: workbook.remove,
    failAt: workbook.failAt,
    reopened: () => memoryDesk(workbook.snapshot()),
  };
}
