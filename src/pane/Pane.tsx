/** The task pane: what the workbook's openings need, kept up while the workbook changes. */
import { FluentProvider } from "@fluentui/react-components";
import type { Workbook } from "../workbook/workbook";
import { usePaneStyles } from "./Pane.styles";
import { PaneBody } from "./PaneBody";
import { PaneBoundary } from "./PaneBoundary";
import { darkTheme, lightTheme } from "./paneTheme";
import type { SaveFile } from "./state/paneContext";
import type { PaneDoors } from "./state/paneDoors";

export type PaneProps = {
  readonly workbook: Workbook;
  readonly doors: PaneDoors;
  readonly theme: "light" | "dark";
  /** Absent where the host saves no files. */
  readonly saveFile?: SaveFile;
};

/** Fills its container, from 280 pixels wide. */
export function Pane({ workbook, doors, theme, saveFile }: PaneProps) {
  const styles = usePaneStyles();
  return (
    <FluentProvider theme={theme === "dark" ? darkTheme : lightTheme} className={styles.provider}>
      <PaneBoundary>
        <PaneBody workbook={workbook} doors={doors} saveFile={saveFile ?? null} />
      </PaneBoundary>
    </FluentProvider>
  );
}
