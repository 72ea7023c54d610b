/** A button that writes, or how far the writing is. */
import { Button } from "@fluentui/react-components";
import { ProgressLine } from "../parts/ProgressLine";
import type { Writing } from "../sheets/useWritingAct";

export type WriteButtonProps = {
  readonly label: string;
  readonly writing: Writing;
  readonly canWrite?: boolean;
  readonly size?: "small" | "medium";
  readonly onWrite: () => void;
};

export const WriteButton = ({
  label,
  writing,
  canWrite = true,
  size = "medium",
  onWrite,
}: WriteButtonProps) =>
  writing.kind === "busy" ? (
    <ProgressLine name="Writing" done={writing.progress} />
  ) : (
    <Button size={size} disabledFocusable={!canWrite} onClick={onWrite}>
      {label}
    </Button>
  );
