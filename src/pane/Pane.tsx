/** The task pane: what the workbook's openings need, kept up while the workbook changes. */
import { FluentProvider } from "@fluentui/react-components";
import type { Workbook } from "../workbook/workbook";
import { usePaneStyles } from "./Pane.styles";
import { PaneBody } from "./PaneBody";
import { PaneBoundary } from "./PaneBoundary";
import { darkTheme, lightTheme } from "./paneTheme";
import type { SaveFile } from "./state/paneContext";

export type PaneProps = {
  readonly workbook: Workbook;
  readonly theme: "light" | "dark";
  /** Absent where the host saves no files. */
  readonly saveFile?: SaveFile;
};

/** Fills its container, from 280 pixels wide. */
export function Pane({ workbook, theme, saveFile }: PaneProps) {
  const styles = usePaneStyles();
  return (
    <FluentProvider theme={theme === "dark" ? darkTheme : lightTheme} className={styles.provider}>
      <PaneBoundary>
        <PaneBody workbook={workbook} saveFile={saveFile ?? null} />
      </PaneBoundary>
    </FluentProvider>
  );
}
