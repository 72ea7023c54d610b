/** The faults of the port in plain words, alike in every host. */
import type { WorkbookFault } from "./workbook";

export const sheetGone = (sheet: string): WorkbookFault => ({
  code: "sheet-gone",
  message: `There is no sheet “${sheet}” any more. Choose another sheet.`,
});

export const tableGone = (table: string): WorkbookFault => ({
  code: "table-gone",
  message: `There is no table “${table}” any more. Choose another table or sheet.`,
});

export const sheetProtected = (sheet: string): WorkbookFault => ({
  code: "sheet-protected",
  message: `The sheet “${sheet}” is protected. Take the protection off (in Excel: Review, Unprotect Sheet) and write again.`,
});

export const workbookProtected: WorkbookFault = {
  code: "workbook-protected",
  message:
    "The structure of this workbook is protected, so no sheet can be added or exchanged. Nothing was changed. Take the protection off (in Excel: Review, Protect Workbook), write again, and put it back on.",
};

export const cancelled: WorkbookFault = {
  code: "cancelled",
  message: "Writing was cancelled. The workbook is as it was.",
};
