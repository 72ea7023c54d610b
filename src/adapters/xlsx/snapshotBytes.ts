/** A whole workbook written as a fresh file. */
import { listsDrawing, listsName, longLists, type List } from "../../workbook/choiceLists";
import { drawnSheet, styleTable } from "../../workbook/drawnSheet";
import { freeSheetName } from "../../workbook/sheetNames";
import type { WorkbookSnapshot } from "../../workbook/snapshot";
import { emptyFile } from "./emptyFile";
import { partsBytes, type Parts } from "./parts";
import { appendSheet } from "./placeSheet";
import { writeSettings } from "./settingsPart";
import { addNames } from "./definedNames";
import { hideSheet, showFirst } from "./sheetList";
import { workbookPath } from "./workbookPart";

/**
 * The bytes of an .xlsx file. `snapshot.leftOut` is lost; all else is in the file.
 *
 * @throws RangeError when no sheet is visible, or a cell holds what no file can.
 */
export const snapshotBytes = (snapshot: WorkbookSnapshot): Uint8Array =>
  partsBytes(snapshotParts(snapshot));

export function snapshotParts(snapshot: WorkbookSnapshot): Parts {
  const { sheets, activeSheet, styles, names, settings } = snapshot;
  const active = sheets.findIndex(({ name, visible }) => visible && name === activeSheet);
  const first = sheets.findIndex(({ visible }) => visible);
  const shown = active < 0 ? first : active;
  if (shown < 0) throw new RangeError("A workbook needs a visible sheet.");
  const parts = emptyFile();
  const lists = longLists(sheets.flatMap(({ choices }) => choices));
  const listsSheet = freeSheetName(
    listsName,
    sheets.map(({ name }) => name),
  );
  for (const [position, sheet] of sheets.entries()) {
    appendSheet(parts, sheet, styles, { sheet: listsSheet, lists }, position === shown);
    if (!sheet.visible) hideSheet(parts, sheet.name, "hidden");
  }
  if (lists.length > 0) appendLists(parts, listsSheet, lists);
  showFirst(parts, shown);
  addNames(parts, names);
  if (Object.keys(settings).length > 0) writeSettings(parts, workbookPath(parts), settings);
  return parts;
}

function appendLists(parts: Map<string, Uint8Array>, name: string, lists: readonly List[]): void {
  const styles = styleTable();
  const sheet = drawnSheet(listsDrawing(lists), name, styles);
  appendSheet(parts, sheet, styles.styles, { sheet: null, lists: [] });
  hideSheet(parts, name, "veryHidden");
}
