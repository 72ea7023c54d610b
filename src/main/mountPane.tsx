/** Puts the task pane into a page. */
import { createRoot } from "react-dom/client";
import { Pane, type PaneProps } from "../pane/Pane";

export type MountedPane = {
  readonly setTheme: (theme: PaneProps["theme"]) => void;
};

/** Fills `host`, which is empty, with the pane. */
export function mountPane(host: HTMLElement, { theme, ...others }: PaneProps): MountedPane {
  const root = createRoot(host);
  const setTheme = (shown: PaneProps["theme"]): void =>
    root.render(<Pane theme={shown} {...others} />);
  setTheme(theme);
  return { setTheme };
}
