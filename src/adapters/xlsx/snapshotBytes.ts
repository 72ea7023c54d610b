/** A whole workbook written as a fresh file. */
import type { WorkbookSnapshot } from "../../workbook/snapshot";
import { emptyFile } from "./emptyFile";
import { partsBytes, type Parts } from "./parts";
import { appendSheet } from "./placeSheet";
import { writeSettings } from "./settingsPart";
import { addNames, setView } from "./workbookEdits";
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
  for (const [position, sheet] of sheets.entries()) {
    appendSheet(parts, sheet, styles, position === shown);
  }
  const hidden = sheets.flatMap(({ visible }, position) => (visible ? [] : [position]));
  setView(parts, shown, hidden);
  addNames(parts, names);
  if (Object.keys(settings).length > 0) writeSettings(parts, workbookPath(parts), settings);
  return parts;
}
