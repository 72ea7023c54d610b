/** What every part of the pane may use: the workbook, the take-off, and ways to go to a cell. */
import { createContext, useContext } from "react";
import type { CellPlace } from "../../core/base/cell";
import type { FileKind } from "../../workbook/files";
import type { WorkbookSnapshot } from "../../workbook/snapshot";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import type { PaneDoors } from "./paneDoors";
import type { TakeOffHandle } from "./useTakeOff";

/** Saves a workbook as a file of its own, under its name; as a .csv, its first sheet. */
export type SaveFile = (workbook: WorkbookSnapshot, kind?: FileKind) => Promise<void>;

export type PaneValue = TakeOffHandle & {
  readonly workbook: Workbook;
  readonly doors: PaneDoors;
  /** `null` where the host saves no files. */
  readonly saveFile: SaveFile | null;
  /** Shows the cell in the spreadsheet. */
  readonly goTo: (place: CellPlace) => void;
  /** Shows why the host did not do something, until it is closed. */
  readonly showFault: (fault: WorkbookFault) => void;
};

export const PaneContext = createContext<PaneValue | null>(null);

/** @throws Error outside a pane. */
export function usePane(): PaneValue {
  const value = useContext(PaneContext);
  if (value === null) throw new Error("Not inside a pane.");
  return value;
}
