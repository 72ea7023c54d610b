/** What writing would change and the button that writes, or how far the writing is; always in sight. */
import { Button, makeStyles } from "@fluentui/react-components";
import { ProgressLine } from "../parts/ProgressLine";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import type { Writing } from "./useWritingAct";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  bar: {
    position: "sticky",
    bottom: "-12px",
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalS,
    margin: "0 -12px -12px",
    padding: tokens.spacingHorizontalM,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground2,
  },
});

export type WriteBarProps = {
  readonly writing: Writing;
  /** In one sentence, or the empty text. */
  readonly changes: string;
  /** What the button does, in its words. */
  readonly action: string;
  readonly canWrite: boolean;
  readonly onWrite: () => void;
  readonly onCancel: () => void;
};

export function WriteBar({ writing, changes, action, canWrite, onWrite, onCancel }: WriteBarProps) {
  const styles = useStyles();
  if (writing.kind === "busy") {
    return (
      <div className={styles.bar}>
        <div role="status">Writing the sheets…</div>
        <ProgressLine name="Writing the sheets" done={writing.progress} />
        <CancelButton onCancel={onCancel} />
      </div>
    );
  }
  return (
    <div className={styles.bar}>
      {changes === "" ? null : <div>{changes}</div>}
      <Button appearance="primary" size="large" disabledFocusable={!canWrite} onClick={onWrite}>
        {action}
      </Button>
    </div>
  );
}

/** Takes the focus of the button that was pressed, which is gone. */
function CancelButton({ onCancel }: Pick<WriteBarProps, "onCancel">) {
  return (
    <Button ref={useFocusOnAppear(true)} onClick={onCancel}>
      Cancel
    </Button>
  );
}
