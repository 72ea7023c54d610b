/** Puts the pane beside the spreadsheet. */
import type { Workbook } from "../../workbook/workbook";

/** Fills `host` with the pane for `workbook`. */
export function mountPane(host: HTMLElement, workbook: Workbook): void {
  host.dataset["host"] = workbook.host;
}
