import { makeStyles } from "@fluentui/react-components";
import { tokens } from "./parts/tokens";

export const usePaneStyles = makeStyles({
  provider: { height: "100%", minWidth: "280px" },
  pane: {
    display: "flex",
    flexDirection: "column",
    boxSizing: "border-box",
    height: "100%",
    overflowY: "hidden",
    backgroundColor: tokens.colorNeutralBackground2,
    color: tokens.colorNeutralForeground1,
    fontSize: tokens.fontSizeBase300,
    lineHeight: tokens.lineHeightBase300,
    "@media (max-height: 480px)": { overflowY: "auto" },
  },
  notice: { padding: `0 ${tokens.spacingHorizontalM} ${tokens.spacingVerticalS}` },
  start: { flexGrow: 1, minHeight: 0, overflowY: "auto", padding: tokens.spacingHorizontalM },
  foot: {
    flexShrink: 0,
    margin: 0,
    padding: `${tokens.spacingVerticalSNudge} ${tokens.spacingHorizontalM}`,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground1,
    color: tokens.colorNeutralForeground2,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
  },
});
