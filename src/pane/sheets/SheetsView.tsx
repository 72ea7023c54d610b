/** Writing the hardware sheets: of which jobs, with or without costs, and what came of it. */
import { Button, makeStyles, Radio, RadioGroup, Switch, tokens } from "@fluentui/react-components";
import { useId, useMemo, useState } from "react";
import type { WorkbookTakeOff } from "../../app/takeOffWorkbook";
import { jobKey } from "../../core/takeoff/takeOff";
import { Notice } from "../parts/Notice";
import { ProgressLine } from "../parts/ProgressLine";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";
import { usePane } from "../state/paneContext";
import { JobChoice } from "./JobChoice";
import { useChanges } from "./useChanges";
import { useWriting, type WritingHandle } from "./useWriting";
import { WrittenSheets } from "./WrittenSheets";

const useStyles = makeStyles({
  view: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalM },
  options: { padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalXS}` },
  write: { width: "100%" },
});

export function SheetsView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const layoutId = useId();
  const { state, change } = usePane();
  const { settings, phase } = state;
  const { jobs } = takeOff.estimate;
  // What is left out is remembered, so that a job that comes later is in.
  const [leftOut, setLeftOut] = useState<ReadonlySet<string>>(new Set());
  const chosen = useMemo(
    () => jobs.filter(({ job }) => !leftOut.has(jobKey(job))),
    [jobs, leftOut],
  );
  const changes = useChanges(chosen);
  const handle = useWriting();
  const uncounted = chosen.reduce((sum, job) => sum + job.uncounted.length, 0);
  return (
    <div className={styles.view}>
      <JobChoice jobs={jobs} leftOut={leftOut} onLeaveOut={setLeftOut} />
      <section>
        <h2 id={layoutId} className={shared.subheading}>
          How
        </h2>
        <div className={styles.options}>
          <RadioGroup
            aria-labelledby={layoutId}
            value={settings.sheetPerJob ? "each" : "one"}
            onChange={(_, { value }) => change({ sheetPerJob: value === "each" })}
          >
            <Radio value="each" label="A sheet for each job" />
            <Radio value="one" label="One sheet for all jobs" />
          </RadioGroup>
          <Switch
            label="With costs"
            checked={settings.withCosts}
            onChange={(_, { checked }) => change({ withCosts: checked })}
          />
        </div>
      </section>
      {uncounted > 0 ? (
        <Notice level="warn" quiet>
          {counted(uncounted, "opening is", "openings are")} not counted. The sheets will say so.
        </Notice>
      ) : null}
      {handle.writing.kind === "busy" ? (
        <BusyWriting {...handle} />
      ) : (
        <>
          {changes === "" || handle.writing.kind === "done" ? null : <div>{changes}</div>}
          <Button
            appearance="primary"
            size="large"
            className={styles.write}
            disabled={chosen.length === 0 || phase !== "ready"}
            onClick={() => handle.write(takeOff, ({ job }) => !leftOut.has(jobKey(job)))}
          >
            Write{" "}
            {chosen.length === jobs.length
              ? "all sheets"
              : `sheets for ${counted(chosen.length, "job")}`}
          </Button>
        </>
      )}
      <Outcome {...handle} />
    </div>
  );
}

function BusyWriting({ writing, cancel }: WritingHandle) {
  const shared = useSharedStyles();
  const progress = writing.kind === "busy" ? writing.progress : 1;
  return (
    <div className={shared.stack}>
      <div role="status">Writing the sheets…</div>
      <ProgressLine name="Writing the sheets" done={progress} />
      <Button onClick={cancel}>Cancel</Button>
    </div>
  );
}

function Outcome({ writing }: WritingHandle) {
  switch (writing.kind) {
    case "done":
      return <WrittenSheets written={writing.written} />;
    case "failed":
      return (
        <Notice level={writing.fault.code === "cancelled" ? "note" : "stop"}>
          {writing.fault.message}
        </Notice>
      );
    case "idle":
    case "busy":
      return null;
  }
}
