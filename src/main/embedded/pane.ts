/** Puts the pane beside the spreadsheet, in the colours that the system asks for. */
import type { Workbook } from "../../workbook/workbook";
import { mountPane } from "../mountPane";

/** Fills `host` with the pane for `workbook`. `dark` is whether the system asks for dark colours. */
export function mountEmbeddedPane(
  host: HTMLElement,
  workbook: Workbook,
  dark: MediaQueryList,
): void {
  const theme = (): "dark" | "light" => (dark.matches ? "dark" : "light");
  const { setTheme } = mountPane(host, workbook, theme());
  dark.addEventListener("change", () => setTheme(theme()));
}
