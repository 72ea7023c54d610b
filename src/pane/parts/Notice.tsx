/** A message across the pane: what is wrong or what was done, and what can be done about it. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { CheckmarkCircleFilled } from "@fluentui/react-icons/svg/checkmark-circle";
import { DismissRegular } from "@fluentui/react-icons/svg/dismiss";
import type { ReactNode } from "react";
import type { FindingLevel } from "../../core/base/finding";
import { LevelIcon } from "./LevelIcon";
import { tokens } from "./tokens";
import { SmallButton } from "./SmallButton";

const useStyles = makeStyles({
  notice: {
    display: "flex",
    alignItems: "flex-start",
    gap: tokens.spacingHorizontalS,
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}`,
    borderRadius: tokens.borderRadiusLarge,
    color: tokens.colorNeutralForeground1,
  },
  stop: {
    backgroundColor: tokens.colorStatusDangerBackground1,
    border: `1px solid ${tokens.colorStatusDangerBorder1}`,
  },
  warn: {
    backgroundColor: tokens.colorStatusWarningBackground1,
    border: `1px solid ${tokens.colorStatusWarningBorder1}`,
  },
  note: {
    backgroundColor: tokens.colorNeutralBackground3,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
  },
  done: {
    backgroundColor: tokens.colorStatusSuccessBackground1,
    border: `1px solid ${tokens.colorStatusSuccessBorder1}`,
  },
  doneIcon: {
    flexShrink: 0,
    color: tokens.colorStatusSuccessForeground1,
    fontSize: "20px",
    lineHeight: 0,
  },
  words: { flexGrow: 1, minWidth: 0, overflowWrap: "anywhere" },
  actions: {
    display: "flex",
    flexWrap: "wrap",
    gap: tokens.spacingHorizontalS,
    marginTop: tokens.spacingVerticalS,
  },
});

export type NoticeProps = {
  readonly level: FindingLevel | "done";
  readonly children: ReactNode;
  readonly actions?: ReactNode;
  readonly onClose?: () => void;
  /** Part of a view and no news: not read out when it appears. */
  readonly quiet?: boolean;
};

/** Read out when it appears: at once for a stop, else when there is a pause. */
export function Notice({ level, children, actions, onClose, quiet = false }: NoticeProps) {
  const styles = useStyles();
  const role = level === "stop" ? "alert" : "status";
  return (
    <div role={quiet ? undefined : role} className={mergeClasses(styles.notice, styles[level])}>
      {level === "done" ? (
        <span aria-hidden className={styles.doneIcon}>
          <CheckmarkCircleFilled />
        </span>
      ) : (
        <LevelIcon level={level} />
      )}
      <div className={styles.words}>
        {children}
        {actions === undefined ? null : <div className={styles.actions}>{actions}</div>}
      </div>
      {onClose === undefined ? null : (
        <SmallButton
          look="bare"
          icon={<DismissRegular />}
          name="Close this message"
          onClick={onClose}
        />
      )}
    </div>
  );
}
