/** Two sides compared, and their sheet of changes written. */
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { revisionDrawing } from "../../app/revisions/revisions";
import { ok } from "../../core/base/result";
import { Notice } from "../parts/Notice";
import { UnderWay } from "../parts/UnderWay";
import { Outcome } from "../sheets/Outcome";
import { useWritingAct } from "../sheets/useWritingAct";
import { WriteBar } from "../sheets/WriteBar";
import { usePane } from "../state/paneContext";
import { Differences } from "./Differences";
import type { Sides } from "./SideChoice";
import { useRevision } from "./useRevision";

export type ComparedIssuesProps = {
  readonly takeOff: WorkbookTakeOff;
  readonly sides: Sides;
};

export function ComparedIssues({ takeOff, sides }: ComparedIssuesProps) {
  const { workbook, state } = usePane();
  const { revision, fault, comparing, say, takeBack, stop, again } = useRevision(
    takeOff,
    sides.from,
    sides.to,
  );
  const { writing, begin, cancel } = useWritingAct();
  if (fault !== null) return <Notice level="stop">{fault.message}</Notice>;
  const underWay =
    comparing === "still" ? null : (
      <UnderWay
        name="Comparing"
        progress={comparing === "stopped" ? null : comparing}
        onStop={stop}
        onGoOn={again}
      />
    );
  if (revision === null) return underWay;
  const write = (): void =>
    begin(async (options) => {
      const written = await workbook.write([revisionDrawing(revision, state.settings)], options);
      return written.ok ? ok({ sheets: written.value, changes: "", older: [] }) : written;
    });
  return (
    <>
      {underWay}
      <Outcome writing={writing} />
      <Differences revision={revision} takeOff={takeOff} onSay={say} onTakeBack={takeBack} />
      <WriteBar
        writing={writing}
        changes=""
        action="Write the sheet of changes"
        canWrite={state.phase === "ready" && comparing === "still"}
        onWrite={write}
        onCancel={cancel}
      />
    </>
  );
}
