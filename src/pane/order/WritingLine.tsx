/** How far the writing is, with the way to cancel it; nothing while nothing is written. */
import { Button, makeStyles } from "@fluentui/react-components";
import { ProgressLine } from "../parts/ProgressLine";
import { tokens } from "../parts/tokens";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import type { Writing } from "../sheets/useWritingAct";

const useStyles = makeStyles({
  line: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalS },
});

export type WritingLineProps = { readonly writing: Writing; readonly onCancel: () => void };

export function WritingLine({ writing, onCancel }: WritingLineProps) {
  const styles = useStyles();
  if (writing.kind !== "busy") return null;
  return (
    <div className={styles.line}>
      <div role="status">Writing the sheets…</div>
      <ProgressLine name="Writing the sheets" done={writing.progress} />
      <Cancel onCancel={onCancel} />
    </div>
  );
}

/** Takes the focus of the button that was pressed. */
function Cancel({ onCancel }: Pick<WritingLineProps, "onCancel">) {
  return (
    <div>
      <Button ref={useFocusOnAppear(true)} onClick={onCancel}>
        Cancel the writing
      </Button>
    </div>
  );
}
