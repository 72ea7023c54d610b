import { makeStyles } from "@fluentui/react-components";
import { tokens } from "../parts/tokens";

/** Looks that the parts of the order share. */
export const useOrderStyles = makeStyles({
  /** Words on the left, a number on the right. */
  row: {
    display: "grid",
    gridTemplateColumns: "minmax(0, 1fr) auto",
    alignItems: "baseline",
    columnGap: tokens.spacingHorizontalM,
    overflowWrap: "anywhere",
  },
  item: {
    padding: `${tokens.spacingVerticalXS} 0`,
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  },
  sums: {
    display: "grid",
    gridTemplateColumns: "minmax(0, 1fr) auto",
    gap: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalM}`,
    margin: 0,
  },
  value: { margin: 0 },
  total: { fontWeight: tokens.fontWeightSemibold },
  late: {
    display: "inline-flex",
    alignItems: "center",
    gap: tokens.spacingHorizontalXS,
    fontWeight: tokens.fontWeightSemibold,
  },
});
