/** Two sides compared, and their sheet of changes written. */
import type { WorkbookTakeOff } from "../../app/takeOffWorkbook";
import { revisionDrawing, type Revision } from "../../app/revisions";
import { ok } from "../../core/base/result";
import { Notice } from "../parts/Notice";
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
  const { compared, say, takeBack } = useRevision(takeOff, sides.from, sides.to);
  const { writing, begin, cancel } = useWritingAct();
  const write = (revision: Revision): void =>
    begin(async (options) => {
      const written = await workbook.write([revisionDrawing(revision, state.settings)], options);
      return written.ok ? ok({ sheets: written.value, changes: "", older: [] }) : written;
    });
  switch (compared.kind) {
    case "busy":
      return <p role="status">Comparing…</p>;
    case "failed":
      return <Notice level="stop">{compared.fault.message}</Notice>;
    case "done":
      return (
        <>
          <Outcome writing={writing} />
          <Differences
            revision={compared.revision}
            takeOff={takeOff}
            onSay={say}
            onTakeBack={takeBack}
          />
          <WriteBar
            writing={writing}
            changes=""
            action="Write the sheet of changes"
            canWrite={state.phase === "ready"}
            onWrite={() => write(compared.revision)}
            onCancel={cancel}
          />
        </>
      );
  }
}
