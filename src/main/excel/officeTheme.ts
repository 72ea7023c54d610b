/** Excel's own colours, light or dark, and the system's where Excel does not tell. */

export type PaneTheme = "light" | "dark";

/** The theme now; `onChange` is told of each change. */
export function followOfficeTheme(onChange: (theme: PaneTheme) => void): PaneTheme {
  const system = matchMedia("(prefers-color-scheme: dark)");
  let shown = themeNow(system.matches);
  // Excel tells of no change: it is looked up when the pane comes back, and when the system changes.
  const lookAgain = (): void => {
    const now = themeNow(system.matches);
    if (now === shown) return;
    shown = now;
    onChange(now);
  };
  system.addEventListener("change", lookAgain);
  document.addEventListener("visibilitychange", lookAgain);
  window.addEventListener("focus", lookAgain);
  void Office.addin.onVisibilityModeChanged(lookAgain);
  return shown;
}

/** The types promise more than hosts keep: Excel on the web leaves the theme out. */
type ToldTheme = Partial<Office.OfficeTheme> | null | undefined;

function themeNow(isSystemDark: boolean): PaneTheme {
  const theme = Office.context.officeTheme as ToldTheme;
  const isDark = theme?.isDarkTheme ?? isDarkColour(theme?.bodyBackgroundColor) ?? isSystemDark;
  return isDark ? "dark" : "light";
}

/** Whether `#rrggbb` is darker than a middle grey; `null` for anything else. */
export function isDarkColour(colour: string | undefined): boolean | null {
  const [, red, green, blue] =
    /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour ?? "") ?? [];
  if (red === undefined || green === undefined || blue === undefined) return null;
  const [r, g, b] = [red, green, blue].map((part) => Number.parseInt(part, 16));
  // Weights of the three colours in brightness: ITU-R BT.601.
  return 0.299 * (r ?? 0) + 0.587 * (g ?? 0) + 0.114 * (b ?? 0) < 128;
}
