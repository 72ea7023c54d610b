/** Snapshots of nothing, to be filled. */
import type { SheetSnapshot, WorkbookSnapshot } from "./snapshot";

/** A visible sheet of the person's, with nothing on it. */
export const blankSheet = (name: string): SheetSnapshot => ({
  name,
  visible: true,
  isProtected: false,
  mark: null,
  written: null,
  rows: [],
  columnWidths: [],
  rowHeights: [],
  frozenRows: 0,
  frozenColumns: 0,
  merges: [],
  tables: [],
  choices: [],
  print: null,
});

/** A workbook of these sheets that opens at the first visible one. */
export const workbookOf = (name: string, sheets: readonly SheetSnapshot[]): WorkbookSnapshot => ({
  name,
  sheets,
  activeSheet: sheets.find(({ visible }) => visible)?.name ?? "",
  styles: [],
  names: [],
  settings: {},
  leftOut: [],
});
