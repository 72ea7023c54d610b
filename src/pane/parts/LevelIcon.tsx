/** The sign of a level: three shapes, so that colour alone tells nothing. */
import { makeStyles } from "@fluentui/react-components";
import { ErrorCircleFilled } from "@fluentui/react-icons/svg/error-circle";
import { InfoRegular } from "@fluentui/react-icons/svg/info";
import { WarningFilled } from "@fluentui/react-icons/svg/warning";
import type { FindingLevel } from "../../core/base/finding";
import { tokens } from "./tokens";

const useStyles = makeStyles({
  icon: { flexShrink: 0, fontSize: "20px", lineHeight: 0 },
  stop: { color: tokens.colorStatusDangerForeground1 },
  warn: { color: tokens.colorStatusWarningForeground1 },
  note: { color: tokens.colorNeutralForeground3 },
});

const icons = { stop: ErrorCircleFilled, warn: WarningFilled, note: InfoRegular };

/** Not read out: the words beside it say the level. */
export function LevelIcon({ level }: { readonly level: FindingLevel }) {
  const styles = useStyles();
  const Icon = icons[level];
  return (
    <span aria-hidden className={`${styles.icon} ${styles[level]}`}>
      <Icon />
    </span>
  );
}
