/** The contract's rig on the real Excel object model over a fake workbook. */
import { openExcelWorkbook } from "../../../src/adapters/excel/excelWorkbook";
import type { Session } from "../../../src/adapters/excel/settling";
import { findSheet, type FakeBook } from "../../fakehost/book";
import { excelApiUpTo, type OfficeModel } from "../../fakehost/excelModel";
import { fakeHost, type FakeHost } from "../../fakehost/fakeHost";
import { loadOfficeModel } from "../../fakehost/officeModel";
import type { Rig, RigSetup } from "../../workbook/rig";
import { bookOf, lookAt } from "./rigBook";

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
  return excelRigOver(bookOf(setup), version, options);
}

/** The same over a workbook that is there already. */
export async function excelRigOver(
  book: FakeBook,
  version: string,
  options: Partial<Session> = {},
): Promise<ExcelRig> {
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
    protectStructure: () => {
      book.structureProtected = true;
      return Promise.resolve();
    },
    replacesInProtected: false,
    look: () => Promise.resolve(lookAt(book)),
    failAt: (call, onwards = false) => {
      host.failWith(call === null ? {} : { request: call, onwards });
    },
    calls: () => host.requests.length,
    close: () => Promise.resolve(),
    hearsTyping: true,
  };
}
