/**
 * The port: what Cribsheet needs of a spreadsheet, in its own words. Types only.
 *
 * Adapters implement it for Excel, for the embedded grid, for files and for tests; one contract
 * suite runs on all of them.
 */
import type { Block, CellPlace } from "../core/base/cell";
import type { Result } from "../core/base/result";
import type { Drawing, SheetMark } from "./drawing";

export type SheetSummary = {
  readonly name: string;
  readonly visible: boolean;
  /** What sheet of ours it is, or `null` where it is the person's. */
  readonly mark: SheetMark | null;
  readonly tables: readonly string[];
};

/** What to read: all that is used of a sheet, or a table with its heading row. */
export type Source =
  | { readonly kind: "sheet"; readonly sheet: string }
  | { readonly kind: "table"; readonly table: string };

export type Selection = CellPlace & { readonly rows: number; readonly columns: number };

/** `cells`: values changed on `sheet`. `sheets`: a sheet came, went or was renamed. `selection`: the person moved. */
export type WorkbookChange =
  | { readonly kind: "cells"; readonly sheet: string }
  | { readonly kind: "sheets" }
  | { readonly kind: "selection"; readonly selection: Selection };

export const workbookFaultCodes = [
  "sheet-gone",
  "table-gone",
  "sheet-protected",
  "workbook-protected",
  "cell-being-edited",
  "workbook-closed",
  "too-large",
  "cancelled",
  "host-refused",
] as const;

/** Why the host did not do it. `message` is plain words with a way on. */
export type WorkbookFault = {
  readonly code: (typeof workbookFaultCodes)[number];
  readonly message: string;
};

export type WrittenSheet = {
  /** The name it has now. */
  readonly name: string;
  readonly mark: SheetMark | null;
  readonly was: "new" | "replaced";
  /** Where the old sheet went, when a person had typed into it: kept whole under this name. */
  readonly keptAs: string | null;
  /**
   * What became of its pictures where they are not seen: `kept` for the file that is saved, or
   * `words` in their place. Absent where they are drawn, and for a sheet without pictures.
   */
  readonly pictures?: "kept" | "words";
  /** What became of its charts: `kept` for the file that is saved, or `none` made. Absent as above. */
  readonly charts?: "kept" | "none";
};

export type WriteOptions = {
  /** Told of progress from 0 to 1. */
  readonly onProgress?: (done: number) => void;
  /** When it aborts before the swap the workbook stays as it was, and the fault is `cancelled`. */
  readonly signal?: AbortSignal;
};

export type Workbook = {
  readonly host: "excel" | "embedded" | "file" | "memory";
  /** The file's name as the person knows it, or the empty text. */
  readonly name: () => Promise<string>;
  readonly sheets: () => Promise<readonly SheetSummary[]>;
  readonly activeSheet: () => Promise<string>;
  readonly selection: () => Promise<Selection | null>;
  /** A blank sheet is a block without rows. */
  readonly read: (source: Source) => Promise<Result<Block, WorkbookFault>>;
  /** Calls `onChange` until the function it returns is called. Our own writes are reported too. */
  readonly watch: (onChange: (change: WorkbookChange) => void) => Promise<() => Promise<void>>;
  readonly goTo: (place: CellPlace) => Promise<Result<null, WorkbookFault>>;
  /**
   * Writes all drawings as one act: afterwards either all of them stand or the workbook is as it was.
   *
   * A sheet of ours with the same mark is replaced in place (same position, same name, references
   * elsewhere keep pointing at it). A sheet without our mark is never touched, whatever its name.
   * Where a person typed into a sheet of ours, the old sheet is kept whole beside the new one.
   */
  readonly write: (
    drawings: readonly Drawing[],
    options?: WriteOptions,
  ) => Promise<Result<readonly WrittenSheet[], WorkbookFault>>;
  /**
   * Our own settings inside the workbook: text by key. An absent key is `null`. A key with a point in
   * it, such as `issues.3`, is for a long text: a host may keep it apart from the others.
   */
  readonly readSetting: (key: string) => Promise<string | null>;
  readonly writeSetting: (key: string, text: string) => Promise<Result<null, WorkbookFault>>;
};
