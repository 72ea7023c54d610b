/** Looks that the parts of the kit-book view share. */
import { makeStyles } from "@fluentui/react-components";
import { tokens } from "../parts/tokens";

export const useBookStyles = makeStyles({
  view: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalS },
  row: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalXXS,
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}`,
    overflowWrap: "anywhere",
  },
  /** A name on the left, a number or a button on the right; one below the other where both are long. */
  head: {
    display: "flex",
    alignItems: "baseline",
    justifyContent: "space-between",
    flexWrap: "wrap",
    columnGap: tokens.spacingHorizontalM,
    rowGap: tokens.spacingVerticalXXS,
  },
  name: { minWidth: 0, overflowWrap: "anywhere" },
  end: { marginLeft: "auto", textAlign: "right" },
  buttons: { display: "flex", flexWrap: "wrap", gap: tokens.spacingHorizontalXS },
  code: {
    fontFamily: tokens.fontFamilyMonospace,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    overflowWrap: "anywhere",
    whiteSpace: "pre-wrap",
  },
  cells: {
    display: "grid",
    gridTemplateColumns: "auto 1fr",
    alignItems: "baseline",
    columnGap: tokens.spacingHorizontalS,
  },
  cell: { margin: 0, minWidth: 0 },
  fault: { display: "flex", gap: tokens.spacingHorizontalXS, alignItems: "flex-start" },
  fields: {
    display: "grid",
    gridTemplateColumns: "repeat(auto-fill, minmax(120px, 1fr))",
    gap: tokens.spacingHorizontalS,
  },
  field: { display: "flex", flexDirection: "column", minWidth: 0 },
  input: { minWidth: 0, width: "100%" },
});
