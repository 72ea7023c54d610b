/** A new file of nothing but drawings. */
import type { Drawing } from "../../workbook/drawing";
import { planWriting } from "../../workbook/plan";
import { emptyFile } from "./emptyFile";
import { fileWorkbook, otherWork, type FileWorkbook } from "./fileWorkbook";
import { placeSheet } from "./placeSheet";

/**
 * A workbook with one sheet per drawing, in order, opening at the first.
 *
 * @throws RangeError when there is no drawing, or two have the same mark.
 */
export async function newFile(name: string, drawings: readonly Drawing[]): Promise<FileWorkbook> {
  if (drawings.length === 0) throw new RangeError("A workbook needs a sheet.");
  const plan = planWriting(drawings, [], false);
  if (!plan.ok) throw new RangeError(plan.error.message);
  const parts = emptyFile();
  for (const planned of plan.value) {
    await otherWork();
    placeSheet(parts, planned);
  }
  return fileWorkbook(parts, name);
}
