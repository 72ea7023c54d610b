import { makeStyles } from "@fluentui/react-components";
import { tokens } from "../parts/tokens";

const appear = { from: { opacity: 0 }, to: { opacity: 1 } };

export const useCountStatusStyles = makeStyles({
  status: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalXS },
  line: {
    display: "flex",
    alignItems: "baseline",
    flexWrap: "wrap",
    columnGap: tokens.spacingHorizontalSNudge,
    minHeight: "32px",
  },
  big: {
    fontSize: tokens.fontSizeBase600,
    fontWeight: tokens.fontWeightSemibold,
    lineHeight: tokens.lineHeightBase600,
    fontVariantNumeric: "tabular-nums",
  },
  doneIcon: {
    alignSelf: "center",
    color: tokens.colorStatusSuccessForeground1,
    fontSize: "20px",
    lineHeight: 0,
  },
  alarm: {
    display: "flex",
    alignItems: "center",
    gap: tokens.spacingHorizontalS,
    minHeight: "36px",
    marginTop: tokens.spacingVerticalXS,
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalM}`,
    borderRadius: tokens.borderRadiusMedium,
    backgroundColor: "#b10e1c",
    color: "#ffffff",
    fontWeight: tokens.fontWeightSemibold,
    ":hover": { backgroundColor: "#960b18" },
    ":active": { backgroundColor: "#7d0813" },
    ":focus-visible": { outlineColor: tokens.colorStrokeFocus2, outlineOffset: "1px" },
    "@media (forced-colors: active)": { border: "2px solid ButtonText" },
  },
  alarmIcon: { flexShrink: 0, fontSize: "20px", lineHeight: 0 },
  alarmWords: { flexGrow: 1 },
  // Most counts end before a person could see that they began.
  busy: {
    display: "flex",
    alignItems: "center",
    gap: tokens.spacingHorizontalS,
    animationName: appear,
    animationDuration: "100ms",
    animationDelay: "300ms",
    animationFillMode: "both",
  },
  busyWords: { flexGrow: 1 },
});
