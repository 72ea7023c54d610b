/** Files on disk: what the page needs of whoever reads and writes them. */
import type { Result } from "../../core/base/result";
import type { WorkbookSnapshot } from "../../workbook/snapshot";

export type WorkbookFiles = {
  /** Reads an .xlsx or .csv file; the fault is plain words. */
  readonly read: (name: string, bytes: Uint8Array) => Result<WorkbookSnapshot, string>;
  /** The workbook as an .xlsx file. */
  readonly write: (snapshot: WorkbookSnapshot) => Uint8Array;
};

/** Loaded when a file is first opened or saved: the page shows without it. */
export type LoadFiles = () => Promise<WorkbookFiles>;
