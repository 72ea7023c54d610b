/** Files of the person's own disk: what a page needs of whoever reads and writes them. Types only. */
import type { CellValue } from "../core/base/cell";
import type { Result } from "../core/base/result";
import type { WorkbookSnapshot } from "./snapshot";

export type FileKind = "xlsx" | "csv";

export type WorkbookFiles = {
  /** Reads an .xlsx or .csv file; the fault is plain words. */
  readonly read: (name: string, bytes: Uint8Array) => Result<WorkbookSnapshot, string>;
  /** The workbook as an .xlsx file. */
  readonly write: (snapshot: WorkbookSnapshot) => Uint8Array;
  /** Rows of cells as a .csv file. */
  readonly writeText: (rows: readonly (readonly CellValue[])[]) => Uint8Array;
};

/** Loaded when a file is first opened or saved: the page shows without it. */
export type LoadFiles = () => Promise<WorkbookFiles>;
