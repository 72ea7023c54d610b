/** One conversation with Excel: its requests, its refusals, its silence. */
import { err, ok, type Result } from "../../core/base/result";
import { thrownFault } from "../../workbook/thrownFault";
import type { WorkbookFault } from "../../workbook/workbook";
import { cellBeingEdited, faultOf } from "./excelFaults";

/**
 * Runs `batch` and turns Excel's refusals into faults. While a person edits a cell Excel holds
 * requests back; with `patience` (milliseconds) the conversation gives up waiting. Only one that
 * changes nothing may have it, since what Excel holds back is carried out later all the same.
 */
export async function inExcel<Value>(
  batch: (context: Excel.RequestContext) => Promise<Value>,
  patience?: number,
): Promise<Result<Value, WorkbookFault>> {
  const talk = Excel.run({ delayForCellEdit: true }, batch).then(ok, (error: unknown) =>
    err(faultOf(error)),
  );
  return patience === undefined ? talk : await firstOf(talk, patience);
}

async function firstOf<Value>(
  talk: Promise<Result<Value, WorkbookFault>>,
  patience: number,
): Promise<Result<Value, WorkbookFault>> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const silence = new Promise<Result<Value, WorkbookFault>>((resolve) => {
    timer = setTimeout(() => {
      resolve(err(cellBeingEdited));
    }, patience);
  });
  try {
    return await Promise.race([talk, silence]);
  } finally {
    clearTimeout(timer);
  }
}

/** The value, for questions whose answer has no room for a fault. @throws the fault as an error. */
export function orThrow<Value>(result: Result<Value, WorkbookFault>): Value {
  if (result.ok) return result.value;
  throw thrownFault(result.error);
}

/** Whether Excel has this version of its API. Above the manifest's floor nothing is used without asking. */
export const hasExcelApi = (version: string): boolean =>
  Office.context.requirements.isSetSupported("ExcelApi", version);
