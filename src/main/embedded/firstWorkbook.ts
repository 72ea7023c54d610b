/** The workbook that the embedded page opens with when nothing is kept in the browser: the demo. */
import { demoDrawings } from "../../app/demo/demoDrawings";
import { drawnWorkbook } from "../../workbook/drawnWorkbook";
import type { WorkbookSnapshot } from "../../workbook/snapshot";

export const firstWorkbook = (): Promise<WorkbookSnapshot> =>
  Promise.resolve(drawnWorkbook("Cribsheet demo", demoDrawings()));
