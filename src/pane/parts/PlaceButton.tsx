/** A button that shows a cell in the spreadsheet. */
import { makeStyles, mergeClasses, shorthands } from "@fluentui/react-components";
import { cellName, type CellPlace } from "../../core/base/cell";
import { usePane } from "../state/paneContext";
import { useSharedStyles } from "./parts.styles";
import { tokens } from "./tokens";

const useStyles = makeStyles({
  button: {
    display: "inline-flex",
    alignItems: "center",
    gap: tokens.spacingHorizontalXS,
    width: "auto",
    minHeight: "24px",
    padding: `0 ${tokens.spacingHorizontalS}`,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
    backgroundColor: tokens.colorNeutralBackground1,
    color: tokens.colorNeutralForeground1,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    textAlign: "left",
    overflowWrap: "anywhere",
    ":hover": {
      backgroundColor: tokens.colorNeutralBackground1Hover,
      ...shorthands.borderColor(tokens.colorBrandStroke1),
    },
  },
  // A mark may be of any length; the whole of it stands in its cell, and a screen reader says it.
  of: {
    display: "-webkit-box",
    overflow: "hidden",
    // eslint-disable-next-line @typescript-eslint/no-deprecated -- no other way tells that more lines follow
    WebkitBoxOrient: "vertical",
    WebkitLineClamp: "2",
  },
  cell: {
    flex: "none",
    color: tokens.colorBrandForegroundLink,
    fontWeight: tokens.fontWeightSemibold,
  },
});

export type PlaceButtonProps = {
  readonly place: CellPlace;
  /** What stands there, such as a mark. */
  readonly of?: string;
};

export function PlaceButton({ place, of = "" }: PlaceButtonProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { goTo } = usePane();
  return (
    <button
      type="button"
      className={mergeClasses(shared.plainButton, styles.button)}
      onClick={() => goTo(place)}
    >
      <span className={shared.hidden}>Go to </span>
      {of === "" ? null : <span className={styles.of}>{of}</span>}
      <span className={styles.cell}>{cellName(place)}</span>
      <span className={shared.hidden}> on {place.sheet}</span>
    </button>
  );
}
