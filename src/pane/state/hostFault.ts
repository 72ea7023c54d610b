/** What a spreadsheet threw instead of answering. */
import { faultInside } from "../../workbook/thrownFault";
import type { WorkbookFault } from "../../workbook/workbook";

/** As a fault that a person can read; `null` where it is a fault of this program and not of the host. */
export function hostFault(thrown: unknown): WorkbookFault | null {
  const told = faultInside(thrown);
  if (told !== null) return told;
  const isOwn = [TypeError, RangeError, ReferenceError].some((kind) => thrown instanceof kind);
  if (isOwn) return null;
  const said = thrown instanceof Error ? thrown.message : String(thrown);
  return {
    code: "host-refused",
    message: `The spreadsheet did not answer. Try again. It said: ${said}`,
  };
}
