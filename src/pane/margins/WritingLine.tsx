/** How far a writing is with the way to leave it, or what came of it. */
import { Button } from "@fluentui/react-components";
import { ProgressLine } from "../parts/ProgressLine";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { Outcome } from "../sheets/Outcome";
import type { WritingActHandle } from "../sheets/useWritingAct";

export function WritingLine({ writing, cancel }: Pick<WritingActHandle, "writing" | "cancel">) {
  if (writing.kind !== "busy") return <Outcome writing={writing} />;
  return (
    <>
      <div role="status">Writing the sheets…</div>
      <ProgressLine name="Writing the sheets" done={writing.progress} />
      <CancelButton onCancel={cancel} />
    </>
  );
}

/** Takes the focus of the button that was pressed, which is gone. */
export function CancelButton({ onCancel }: { readonly onCancel: () => void }) {
  return (
    <Button ref={useFocusOnAppear(true)} onClick={onCancel}>
      Cancel
    </Button>
  );
}
