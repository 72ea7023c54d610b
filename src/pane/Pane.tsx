/** The task pane: what the workbook's openings need, kept up while the workbook changes. */
import { FluentProvider } from "@fluentui/react-components";
import type { Workbook } from "../workbook/workbook";
import { usePaneStyles } from "./Pane.styles";
import { PaneBody } from "./PaneBody";
import { PaneBoundary } from "./PaneBoundary";
import { darkTheme, lightTheme } from "./paneTheme";

export type PaneProps = {
  readonly workbook: Workbook;
  readonly theme: "light" | "dark";
};

/** Fills its container, from 280 pixels wide. */
export function Pane({ workbook, theme }: PaneProps) {
  const styles = usePaneStyles();
  return (
    <FluentProvider theme={theme === "dark" ? darkTheme : lightTheme} className={styles.provider}>
      <PaneBoundary>
        <PaneBody workbook={workbook} />
      </PaneBoundary>
    </FluentProvider>
  );
}
