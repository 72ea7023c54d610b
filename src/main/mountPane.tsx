/** Puts the task pane into a page. */
import { createRoot } from "react-dom/client";
import { Pane, type PaneProps } from "../pane/Pane";
import type { Workbook } from "../workbook/workbook";

export type MountedPane = {
  readonly setTheme: (theme: PaneProps["theme"]) => void;
};

/** Fills `host`, which is empty, with the pane for `workbook`. */
export function mountPane(
  host: HTMLElement,
  workbook: Workbook,
  theme: PaneProps["theme"],
): MountedPane {
  const root = createRoot(host);
  const setTheme = (shown: PaneProps["theme"]): void =>
    root.render(<Pane workbook={workbook} theme={shown} />);
  setTheme(theme);
  return { setTheme };
}
