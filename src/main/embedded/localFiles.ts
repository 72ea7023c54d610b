/** Files of the person's own disk, read and written in the browser. */
import { openFile } from "../../adapters/xlsx/openFile";
import { writeCsv } from "../../adapters/xlsx/writeCsv";
import { snapshotBytes } from "../../adapters/xlsx/snapshotBytes";
import { err, ok } from "../../core/base/result";
import type { WorkbookFiles } from "../../workbook/files";

export const localFiles: WorkbookFiles = {
  read: (name, bytes) => {
    const opened = openFile(bytes, name);
    return opened.ok ? ok(opened.value.snapshot()) : err(opened.error.message);
  },
  write: (snapshot) => snapshotBytes(snapshot),
  writeText: writeCsv,
};
