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

const tooLarge: WorkbookFault = {
  code: "too-large",
  message:
    "This is more than Excel takes at once. Write fewer jobs at a time, or take very long texts out of the cells.",
};

const partProtected: WorkbookFault = {
  code: "sheet-protected",
  message: "Something here is protected. Take the protection off the sheet and try again.",
};

const gone: WorkbookFault = {
  code: "sheet-gone",
  message:
    "A sheet or table that was needed is no longer there. Look at the workbook and try again.",
};

const faults: Readonly<Record<string, WorkbookFault>> = {
  AccessDenied: partProtected,
  InvalidOperationInCellEditMode: cellBeingEdited,
  RequestPayloadSizeLimitExceeded: tooLarge,
  ResponsePayloadSizeLimitExceeded: tooLarge,
  OperationCellsExceedLimit: tooLarge,
  RangeExceedsLimit: tooLarge,
  InactiveWorkbook: closed,
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
