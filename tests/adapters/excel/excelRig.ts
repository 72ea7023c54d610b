/** The contract's rig on the real Excel object model over a fake workbook. */
import { cellName } from "../../../src/core/base/cell";
import { openExcelWorkbook } from "../../../src/adapters/excel/excelWorkbook";
import type { Session } from "../../../src/adapters/excel/writing";
import { keyColumn, keyRow, parseArea, type Area } from "../../fakehost/areas";
import { cellOf, findSheet, newBook, nextId, type FakeBook } from "../../fakehost/book";
import { put, putFormula } from "../../fakehost/entry";
import { fakeHost, type FakeHost } from "../../fakehost/fakeHost";
import { excelApiUpTo, loadOfficeModel, type OfficeModel } from "../../fakehost/officeModel";
import type { Rig, RigCell, RigSetup, SeenCell, SeenSheet } from "../../workbook/rig";

export type ExcelRig = Rig & { readonly host: FakeHost; readonly book: FakeBook };

const models = new Map<string, OfficeModel>();

/** Loads the object model as a host with ExcelApi up to `version` has it; once for each version. */
function modelFor(version: string): OfficeModel {
  const known = models.get(version) ?? loadOfficeModel(excelApiUpTo(version));
  models.set(version, known);
  return known;
}

/** Puts `Excel` and `Office` where the shipped page has them, and connects them to `book`. */
export function excelOver(book: FakeBook, version: string): FakeHost {
  const model = modelFor(version);
  Object.assign(globalThis, {
    Excel: model.Excel,
    Office: { context: { requirements: { isSetSupported: excelApiUpTo(version) } } },
  });
  return fakeHost(book, model.OfficeExtension);
}

export async function excelRig(
  setup: RigSetup,
  version = "1.9",
  options: Partial<Session> = {},
): Promise<ExcelRig> {
  const book = bookOf(setup);
  const host = excelOver(book, version);
  const workbook = await openExcelWorkbook(options);
  const { person } = host;
  return {
    workbook,
    host,
    book,
    type: (sheet, cell, typed) => {
      if (typed === null || typeof typed !== "object") person.type(sheet, cell, typed);
      else if ("formula" in typed) person.typeFormula(sheet, cell, typed.formula);
      else person.type(sheet, cell, typed.serial);
      return Promise.resolve();
    },
    rename: (sheet, name) => {
      person.rename(sheet, name);
      return Promise.resolve();
    },
    protect: (name) => {
      const sheet = findSheet(book, name);
      if (sheet !== undefined) sheet.isProtected = true;
      return Promise.resolve();
    },
    look: () => Promise.resolve(lookAt(book)),
    failAt: (call, onwards = false) => {
      host.failWith(call === null ? {} : { request: call, onwards });
    },
    calls: () => host.requests.length,
    close: () => Promise.resolve(),
    hearsTyping: true,
  };
}

export function bookOf({ sheets, structureProtected = false }: RigSetup): FakeBook {
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
  book.structureProtected = structureProtected;
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
