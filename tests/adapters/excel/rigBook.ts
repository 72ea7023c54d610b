/** The fake workbook as a rig sets it up and looks at it. */
import { cellName } from "../../../src/core/base/cell";
import { keyColumn, keyRow, parseArea, type Area } from "../../fakehost/areas";
import { cellOf, findSheet, newBook, nextId, type FakeBook } from "../../fakehost/book";
import { put, putFormula } from "../../fakehost/entry";
import type { RigCell, RigSetup, SeenCell, SeenSheet } from "../../workbook/rig";

export function bookOf({ sheets }: RigSetup): FakeBook {
  const [first, ...others] = sheets;
  if (first === undefined) throw new RangeError("A workbook has a sheet");
  const book = newBook(first.name, ...others.map(({ name }) => name));
  for (const rigSheet of sheets) {
    const sheet = findSheet(book, rigSheet.name);
    if (sheet === undefined) continue;
    for (const [name, typed] of Object.entries(rigSheet.cells ?? {})) {
      const { row, column } = parseArea(name);
      enterAs(cellOf(sheet, row, column), typed);
    }
    for (const [name, address] of Object.entries(rigSheet.tables ?? {})) {
      const area: Area = parseArea(address);
      book.tables.push({ id: nextId(book, "T"), name, sheet, area, looks: { showTotals: false } });
    }
    if (rigSheet.hidden === true) sheet.visibility = "Hidden";
    sheet.isProtected = rigSheet.protected === true;
  }
  return book;
}

function enterAs(cell: ReturnType<typeof cellOf>, typed: RigCell): void {
  if (typeof typed !== "object") put(cell, typed);
  else if ("formula" in typed) putFormula(cell, typed.formula);
  else {
    put(cell, typed.serial);
    cell.format = "yyyy-mm-dd";
  }
}

/** Every sheet as it stands, the hidden ones too, cells in order of rows. */
export const lookAt = (book: FakeBook): readonly SeenSheet[] =>
  book.sheets.map(({ name, visibility, cells }) => ({
    name,
    visible: visibility === "Visible",
    cells: Object.fromEntries(
      [...cells]
        .sort(([one], [other]) => one - other)
        .flatMap(([key, { value, formula }]): [string, SeenCell][] => {
          const at = cellName({ row: keyRow(key), column: keyColumn(key) });
          if (formula !== null) return [[at, { formula }]];
          if (value === "") return [];
          return [[at, typeof value === "object" ? value.error : value]];
        }),
    ),
  }));
