/** A person before a workbook in the real Excel object model over a fake workbook. */
import type { CellValue } from "../../../src/core/base/cell";
import { isStampName, readStamp } from "../../../src/workbook/sheetStamp";
import type { SheetMark } from "../../../src/workbook/drawing";
import type { Desk, DeskSheet } from "../../app/corrections/desk";
import { snapshotOf, type TypedSheets } from "../../app/typedWorkbook";
import { cellKey, keyColumn, keyRow } from "../../fakehost/areas";
import {
  blankCell,
  cellOf,
  findSheet,
  isEmpty,
  shownAt,
  usedArea,
  whileStill,
  type FakeBook,
  type FakeCell,
  type FakeSheet,
} from "../../fakehost/book";
import { put } from "../../fakehost/entry";
import { pasted } from "../../fakehost/formulaText";
import { cellName } from "../../../src/core/base/cell";
import { excelRig } from "./excelRig";
import type { RigCell } from "../../workbook/rig";

/** A workbook with these sheets, in which Excel calculates. */
export async function excelDesk(sheets: TypedSheets, version: string): Promise<Desk> {
  const { workbook, book, host } = await excelRig({ sheets: rigSheets(sheets) }, version);
  const named = (name: string): FakeSheet => {
    const sheet = findSheet(book, name);
    if (sheet === undefined) throw new RangeError(`No such sheet: ${name}`);
    return sheet;
  };
  const desk: Desk = {
    workbook,
    sheets: () => whileStill(book, () => book.sheets.map((sheet) => deskSheet(book, sheet))),
    type: ({ sheet, row, column }, value) => {
      const cell = cellOf(named(sheet), row, column);
      put(cell, value === null || typeof value === "object" ? "" : value);
    },
    rearrange: (name, order) => rearrange(named(name), order),
    rename: host.person.rename,
    remove: host.person.deleteSheet,
    failAt: (call) => host.failWith(call === null ? {} : { request: call }),
    reopened: () => desk,
  };
  return desk;
}

const rigSheets = (sheets: TypedSheets) =>
  snapshotOf(sheets).sheets.map(({ name, rows }) => ({
    name,
    cells: Object.fromEntries(
      rows.flatMap((cells, row) =>
        cells.flatMap((cell, column): [string, RigCell][] => {
          const value = cell?.value ?? null;
          return value === null || (typeof value === "object" && value.kind === "error")
            ? []
            : [[cellName({ row, column }), value]];
        }),
      ),
    ),
  }));

function deskSheet(book: FakeBook, sheet: FakeSheet): DeskSheet {
  const rows: { value: CellValue; formula?: string }[][] = [];
  const used = usedArea(sheet);
  for (let row = 0; used !== null && row < used.row + used.rows; row += 1) {
    rows.push(
      Array.from({ length: used.column + used.columns }, (_, column) => {
        const formula = sheet.cells.get(cellKey(row, column))?.formula ?? null;
        const value = shown(book, sheet, row, column);
        return formula === null ? { value } : { value, formula };
      }),
    );
  }
  return { name: sheet.name, mark: markOf(book, sheet), rows };
}

function shown(book: FakeBook, sheet: FakeSheet, row: number, column: number): CellValue {
  const value = shownAt(book, sheet, row, column);
  if (value === "") return null;
  return typeof value === "object" ? { kind: "error", error: value.error } : value;
}

const markOf = ({ names }: FakeBook, { name }: FakeSheet): SheetMark | null =>
  names
    .filter((each) => each.sheet === null && isStampName(each.name))
    .map(({ formula }) => readStamp(formula))
    .find((stamp) => stamp?.sheet === name)?.mark ?? null;

/** As sorting, inserting and deleting do it: a formula goes with its row and names the cells beside it. */
function rearrange(sheet: FakeSheet, order: readonly (number | null)[]): void {
  const before = new Map<number, [column: number, cell: FakeCell][]>();
  for (const [key, cell] of sheet.cells) {
    const row = before.get(keyRow(key)) ?? [];
    row.push([keyColumn(key), cell]);
    before.set(keyRow(key), row);
  }
  const last = Math.max(order.length - 1, ...before.keys());
  sheet.cells.clear();
  for (let row = 0; row <= last; row += 1) {
    const from = order[row] ?? null;
    for (const [column, cell] of from === null ? [] : (before.get(from) ?? [])) {
      const formula = cell.formula === null ? null : pasted(cell.formula, row - (from ?? row), 0);
      const moved = { ...blankCell(), ...cell, formula };
      if (!isEmpty(moved)) sheet.cells.set(cellKey(row, column), moved);
    }
  }
}
