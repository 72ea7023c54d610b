/** Puts the task pane into a page. */
import { createRoot } from "react-dom/client";
import { Pane, type PaneProps } from "../pane/Pane";
import { paneDoors } from "./paneDoors";

/** The doors are those of every page. */
export type MountProps = Omit<PaneProps, "doors">;

export type MountedPane = {
  readonly setTheme: (theme: PaneProps["theme"]) => void;
};

/** Fills `host`, which is empty, with the pane. */
export function mountPane(host: HTMLElement, { theme, ...others }: MountProps): MountedPane {
  const root = createRoot(host);
  const setTheme = (shown: PaneProps["theme"]): void =>
    root.render(<Pane theme={shown} doors={paneDoors} {...others} />);
  setTheme(theme);
  return { setTheme };
}
