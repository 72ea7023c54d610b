/** A button that writes what is shown as a sheet of ours, and what came of it. */
import { Button } from "@fluentui/react-components";
import { ok } from "../../core/base/result";
import type { Drawing } from "../../workbook/drawing";
import { ProgressLine } from "../parts/ProgressLine";
import { Outcome } from "../sheets/Outcome";
import { useWritingAct } from "../sheets/useWritingAct";
import { usePane } from "../state/paneContext";

export type WriteOneProps = {
  readonly label: string;
  readonly canWrite?: boolean;
  /** Made when they are to be written. */
  readonly draw: () => readonly Drawing[];
};

export function WriteOne({ label, canWrite = true, draw }: WriteOneProps) {
  const { workbook } = usePane();
  const { writing, begin } = useWritingAct();
  const write = (): void =>
    begin(async (options) => {
      const written = await workbook.write(draw(), options);
      return written.ok ? ok({ sheets: written.value, changes: "", older: [] }) : written;
    });
  return (
    <>
      {writing.kind === "busy" ? (
        <ProgressLine name="Writing" done={writing.progress} />
      ) : (
        <Button disabledFocusable={!canWrite} onClick={write}>
          {label}
        </Button>
      )}
      <Outcome writing={writing} />
    </>
  );
}
