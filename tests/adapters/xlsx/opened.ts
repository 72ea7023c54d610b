import type { FileWorkbook } from "../../../src/adapters/xlsx/fileWorkbook";
import { openFile } from "../../../src/adapters/xlsx/openFile";

/** The file opened; one that cannot be fails the test with its message. */
export function fileWorkbookOf(bytes: Uint8Array, name = "Job.xlsx"): FileWorkbook {
  const file = openFile(bytes, name);
  if (!file.ok) throw new Error(file.error.message);
  return file.value;
}
