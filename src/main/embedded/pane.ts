/** Puts the pane beside the spreadsheet, in the colours that the system asks for. */
import { mountPane, type MountProps } from "../mountPane";

/** Fills `host` with the pane. `dark` is whether the system asks for dark colours. */
export function mountEmbeddedPane(
  host: HTMLElement,
  props: Omit<MountProps, "theme">,
  dark: MediaQueryList,
): void {
  const theme = (): "dark" | "light" => (dark.matches ? "dark" : "light");
  const { setTheme } = mountPane(host, { ...props, theme: theme() });
  dark.addEventListener("change", () => setTheme(theme()));
}
