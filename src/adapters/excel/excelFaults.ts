/** What Excel refused, in plain words. Its codes are those of the Office JavaScript API. */
import type { WorkbookFault } from "../../workbook/workbook";

export const cellBeingEdited: WorkbookFault = {
  code: "cell-being-edited",
  message:
    "Excel is waiting for you: finish what you are typing in a cell (Enter or Esc) or close the open dialog, then try again.",
};

export const otherIsWriting: WorkbookFault = {
  code: "host-refused",
  message:
    "Cribsheet is writing in this workbook from another window or for another person. Wait a minute and try again.",
};

export const tidyingLeft: WorkbookFault = {
  code: "host-refused",
  message:
    "The sheets are written and complete, but Excel stopped answering before the old ones were cleared away. That is done the next time Cribsheet opens in this workbook.",
};

export const halfWritten: WorkbookFault = {
  code: "host-refused",
  message:
    "Excel stopped answering while the sheets were exchanged. Nothing is lost: open Cribsheet in this workbook again, and it puts the sheets back as they were.",
};

const closed: WorkbookFault = {
  code: "workbook-closed",
  message: "The workbook is closed, or Excel no longer answers. Open it again and try once more.",
};

/** Where several workbooks are open, Excel answers for the one in front only. */
export const otherInFront: WorkbookFault = {
  code: "host-refused",
  message:
    "Excel has another workbook, or a chart, in front. Click on a cell of this workbook and try again.",
};

const noCells: WorkbookFault = {
  code: "host-refused",
  message: "A chart fills the sheet in front. Go to a sheet with cells and try again.",
};

const filtered: WorkbookFault = {
  code: "host-refused",
  message: "A filter is in the way. Clear the filters of the sheet (Data, Clear) and try again.",
};

const tooLarge: WorkbookFault = {
  code: "too-large",
  message:
    "This is more than Excel takes at once. Write fewer jobs at a time, or take very long texts out of the cells.",
};

/** `cell` is the last one in use. */
export const sheetTooLarge = (sheet: string, cell: string): WorkbookFault => ({
  code: "too-large",
  message: `The sheet “${sheet}” is in use as far as ${cell} (Ctrl+End goes there), which is more than can be read. Delete the rows and columns that hold nothing of yours, or hide the sheet, and try again.`,
});

const partProtected: WorkbookFault = {
  code: "sheet-protected",
  message:
    "Something here is protected, or the workbook is open for reading only. Take the protection off the sheet, or open the workbook for editing, and try again.",
};

const gone: WorkbookFault = {
  code: "sheet-gone",
  message:
    "A sheet or table that was needed is no longer there. Look at the workbook and try again.",
};

/** (Source: Microsoft's page on error handling with the application-specific JavaScript APIs.) */
const faults: Readonly<Record<string, WorkbookFault>> = {
  AccessDenied: partProtected,
  InvalidOperationInCellEditMode: cellBeingEdited,
  RequestPayloadSizeLimitExceeded: tooLarge,
  ResponsePayloadSizeLimitExceeded: tooLarge,
  OperationCellsExceedLimit: tooLarge,
  RangeExceedsLimit: tooLarge,
  MemoryLimitReached: tooLarge,
  InactiveWorkbook: otherInFront,
  InvalidSelection: otherInFront,
  UnsupportedSheet: noCells,
  FilteredRangeConflict: filtered,
  RequestAborted: closed,
  ConnectionFailure: closed,
  ServiceNotAvailable: closed,
  InvalidRequestContext: closed,
  ItemNotFound: gone,
  InvalidReference: gone,
  InvalidObjectPath: gone,
};

/** Codes that only a mistake in this adapter brings about. */
const ourMistakes = ["PropertyNotLoaded", "ApiNotFound", "ApiNotAvailable", "ValueNotLoaded"];

type ExcelError = { readonly code: string; readonly message: string };

/** Whether Excel said it. Its errors come from a script of their own, so no class tells them. */
export const isExcelError = (error: unknown): error is ExcelError =>
  typeof error === "object" &&
  error !== null &&
  "code" in error &&
  typeof error.code === "string" &&
  "debugInfo" in error;

/**
 * The fault that an error of Excel's means.
 *
 * @throws the error itself when it is a mistake in the program.
 */
export function faultOf(error: unknown): WorkbookFault {
  if (!isExcelError(error) || ourMistakes.includes(error.code)) throw error;
  return (
    faults[error.code] ?? {
      code: "host-refused",
      message: `Excel refused: ${error.message} Try again; if it refuses once more, save the workbook, close it and open it again.`,
    }
  );
}
